import { type PointerEvent, useLayoutEffect, useMemo, useRef } from 'react';
import { profileScale, profileSvg } from '../../plan/index.ts';
import type { Study } from '../../study/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../../units/index.ts';
import { shownStudy, useReading, useSketch, useStudy } from '../state/index.ts';
import { WhyMargin } from '../study/index.ts';
import { drawingOf } from './drawing.ts';
import { profileAt } from './profile-at.ts';
import { type Size, useSize } from './use-size.ts';

/** The true-scale profile, the same drawing as on paper, as large as its pane; a station under the mouse shows on the map too. */
export function ProfilePane({ light }: { readonly light: 'day' | 'night' }) {
  const study = useStudy(shownStudy);
  const stale = useStudy((state) => state.stale);
  const units = useReading((state) => state.units);
  const pane = useRef<HTMLElement>(null);
  const paper = useRef<HTMLDivElement>(null);
  const size = useSize(pane);
  const profiled = study?.profile ? study : null;
  const svg = useMemo(
    () =>
      profiled && size
        ? profileSvg(profiled, { units, ...size, palette: light === 'night' ? 'night' : 'light' })
        : null,
    [profiled, size, units, light],
  );
  useLayoutEffect(() => {
    const drawing = svg === null ? [] : [drawingOf(svg)];
    paper.current?.replaceChildren(...drawing);
  }, [svg]);

  return (
    <section ref={pane} className={`profile-pane${stale ? ' is-stale' : ''}`} aria-label="Profile">
      <div ref={paper} className="profile-paper" data-testid="profile" />
      {profiled && size && <Scrub study={profiled} size={size} units={units} />}
      {!profiled && <EmptyProfile asked={study !== null} />}
      <WhyMargin />
    </section>
  );
}

/** The station in hand: moved by the mouse, a finger or the arrow keys, shown here and on the map. */
function Scrub({ study, size, units }: { readonly study: Study; readonly size: Size; readonly units: UnitSystem }) {
  const hairM = useSketch((state) => state.hairM);
  const scale = useMemo(() => profileScale(study, size.width, size.height), [study, size]);
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
      {station && (
        <>
          <span className="hair" style={{ left: scale.px(station.distanceM) }} />
          <span className="hair-dot" style={{ left: scale.px(station.distanceM), top: scale.py(station.elevationM) }} />
          <span className="hair-flag num" style={{ left: Math.min(scale.px(station.distanceM), size.width - 120) }}>
            {words}
          </span>
        </>
      )}
    </div>
  );
}

/** Neat line and what to do, in the place of the missing drawing. */
const EmptyProfile = ({ asked }: { readonly asked: boolean }) => (
  <p className="profile-empty">
    {asked ? 'No profile: there is no descent on this side.' : 'The slope below the edge is drawn here at true scale.'}
  </p>
);
