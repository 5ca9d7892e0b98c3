import { useMemo } from 'react';
import type { QuantityName } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';
import { edgeToAnchorM } from './computed-words.ts';
import { type Stander, sideView } from './side-view.ts';

const WIDTH = 354;
const HEIGHT = 114;
/** Seen eye to eye, a person is drawn no smaller than this. */
const LEAST_TALL = 16;

/** Where a step reads the ground, and the ground there at true scale where it is known: who stands where, and what is read between. */
export function StepSketch({ study, quantity, units }: Props) {
  const spanM = spanOf(study, quantity);
  if (!spanM) return null;
  const isAngle = quantity === 'angleDeg';
  return (
    <figure className="step-sketch" data-reads={quantity}>
      <Ground {...{ study, spanM, isAngle }} />
      <figcaption>
        {isAngle && study.angle ? (
          <>
            <span>eye to eye, {formatLength(study.angle.windowM, units)} apart,</span>
            <span>
              {formatLength(spanM[0], units)} to {formatLength(spanM[1], units)} out,
            </span>
            <span>tied in, on the belay</span>
          </>
        ) : (
          <>
            <span>back from the edge to the anchor, </span>
            <span>{formatLength(-spanM[0], units, 'down')} as computed; </span>
            <span>tied in near the edge</span>
          </>
        )}
      </figcaption>
    </figure>
  );
}

function Ground({ study, spanM, isAngle }: GroundProps) {
  const [fromM, toM] = spanM;
  const view = useMemo(
    () => study.profile && sideView(study.profile, [fromM, toM], WIDTH, HEIGHT),
    [study.profile, fromM, toM],
  );
  if (!view) return null;
  const [above, below] = view.ends;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path className="sketch-earth" d={view.earth} />
      <path className="sketch-ground" d={view.ground} />
      {isAngle ? (
        <>
          <path className="sketch-stretch" d={view.stretch} />
          <path className="sketch-read" d={`M${above.x} ${above.eyeY}L${below.x} ${below.eyeY}`} />
          <Person at={above} />
          <Person at={below} />
        </>
      ) : (
        <>
          <path className="sketch-read" d={`M${above.x} ${above.y - 6}L${below.x} ${below.y - 6}`} />
          <path
            className="sketch-end"
            d={`M${above.x} ${above.y - 14}V${above.y}M${below.x} ${below.y - 14}V${below.y}`}
          />
          <Person at={below} />
        </>
      )}
    </svg>
  );
}

interface GroundProps {
  readonly study: Study;
  readonly spanM: readonly [number, number];
  readonly isAngle: boolean;
}

interface Props {
  readonly study: Study;
  readonly quantity: QuantityName;
  readonly units: UnitSystem;
}

/** Between what the step reads, metres from the edge; null where that is not known. */
function spanOf(study: Study, quantity: QuantityName): readonly [number, number] | null {
  if (quantity === 'angleDeg') return study.angle && [Math.max(0, study.angle.stretchM[0]), study.angle.stretchM[1]];
  const backM = quantity === 'edgeToAnchorM' ? edgeToAnchorM(study) : undefined;
  return backM === undefined ? null : [-backM, 0];
}

/** Head, body and legs, the eyes where they look from. */
function Person({ at }: { readonly at: Stander }) {
  const tall = Math.max(LEAST_TALL, at.y - at.eyeY);
  const hip = at.y - 0.45 * tall;
  const foot = 0.17 * tall;
  return (
    <g className="sketch-person">
      <path d={`M${at.x} ${at.y - tall}V${hip}L${at.x - foot} ${at.y}M${at.x} ${hip}L${at.x + foot} ${at.y}`} />
      <circle cx={at.x} cy={at.y - tall} r={Math.max(2.4, 0.11 * tall)} />
    </g>
  );
}
