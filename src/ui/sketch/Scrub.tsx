import type { PointerEvent } from 'react';
import type { PairScale, ProfileScale } from '../../plan/index.ts';
import type { Study } from '../../study/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../../units/index.ts';
import { useSketch } from '../state/index.ts';
import { profileAt } from './profile-at.ts';

interface Props {
  readonly study: Study;
  /** Of the drawing below: the profile alone, or plan view and profile. */
  readonly scale: ProfileScale | PairScale;
  readonly width: number;
  readonly units: UnitSystem;
}

/** Half of the flag's width at its longest, pixels. */
const FLAG_PX = 120;

/** The station in hand: moved by the mouse, a finger or the arrow keys, shown on every drawing that is there. */
export function Scrub({ study, scale, width, units }: Props) {
  const hairM = useSketch((state) => state.hairM);
  const longM = study.descent?.horizontalM ?? 0;
  const station = hairM === null ? null : profileAt(study, hairM);
  const onMove = (event: PointerEvent<HTMLElement>): void => {
    const x = event.clientX - event.currentTarget.getBoundingClientRect().left;
    const m = scale.distanceAt(x);
    useSketch.setState({ hairM: m < 0 || m > longM ? null : m });
  };
  const words = station
    ? `${formatLength(station.distanceM, units)} out · ${formatLength(station.downM, units)} down · ${formatDegrees(station.angleDeg)}`
    : '';
  return (
    <div
      className="scrub"
      role="slider"
      tabIndex={0}
      aria-label="Station along the descent"
      aria-valuemin={0}
      aria-valuemax={Math.round(longM)}
      aria-valuenow={Math.round(hairM ?? 0)}
      aria-valuetext={words || 'none'}
      onPointerMove={onMove}
      onPointerDown={onMove}
      onPointerLeave={() => useSketch.setState({ hairM: null })}
      onBlur={() => useSketch.setState({ hairM: null })}
      onKeyDown={(event) => {
        const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
        if (by === 0) return;
        event.preventDefault();
        const step = event.shiftKey ? 5 : 1;
        useSketch.setState({ hairM: Math.min(longM, Math.max(0, (hairM ?? 0) + by * step)) });
      }}
    >
      {station && <Hair at={station} scale={scale} width={width} words={words} />}
    </div>
  );
}

function Hair({ at, scale, width, words }: Pick<Props, 'scale' | 'width'> & { at: At; words: string }) {
  const left = scale.px(at.distanceM);
  const top = scale.py(at.elevationM);
  const pair = 'planY' in scale ? scale : null;
  return (
    <>
      <span className="hair" style={pair ? { left, top: pair.planY, height: top - pair.planY } : { left }} />
      {pair && <span className="hair-dot" style={{ left, top: pair.planY }} />}
      <span className="hair-dot" style={{ left, top }} />
      <span
        className="hair-flag num"
        style={{ left: Math.max(FLAG_PX, Math.min(left, width - FLAG_PX)), ...(pair && { top: pair.planBottom + 4 }) }}
      >
        {words}
      </span>
    </>
  );
}

type At = NonNullable<ReturnType<typeof profileAt>>;
