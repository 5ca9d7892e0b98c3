/** @jsxImportSource preact */
import type { AngleClass } from '../../../book/index.ts';
import { ringPaths, ringRadius } from '../../../plan/index.ts';

/** A site's sign: a ring cut by the ground at its class's own slope; never alone, a name stands beside it. */
export function Ring({ planAs, undecided }: { planAs: AngleClass | null; undecided: boolean }) {
  const look = planAs !== null && undecided ? 'undecided' : planAs;
  const { ground, fill, hatch } = ringPaths(look);
  const words = planAs === null ? 'no class' : undecided ? `undecided, plan as ${planAs}` : `plan as ${planAs}`;
  return (
    <svg class={`ring ${look ?? ''}`} width="30" height="30" viewBox="0 0 24 24" role="img" aria-label={words}>
      <circle class="rim" cx="12" cy="12" r={ringRadius} />
      {fill && <path class="earth" d={fill} />}
      {hatch && <path class="hatch" d={hatch} />}
      {ground && <path class="ground" d={ground} />}
    </svg>
  );
}
