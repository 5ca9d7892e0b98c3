/** @jsxImportSource preact */
import type { AngleClass } from '../../../book/index.ts';

/** Slope of the ground that cuts the ring, degrees: the class's own. */
const slopes = { low: 20, steep: 40, high: 66 } as const;
const R = 9.6;
const LIP = { x: 8, y: 8.4 } as const;

/** A site's sign: a ring cut by the ground at its class's own slope; never alone, a name stands beside it. */
export function Ring({ planAs, undecided }: { planAs: AngleClass | null; undecided: boolean }) {
  if (planAs === null) {
    return (
      <svg class="ring" width="30" height="30" viewBox="0 0 24 24" role="img" aria-label="no class">
        <circle class="rim" cx="12" cy="12" r={R} />
      </svg>
    );
  }
  const angle = (slopes[planAs] * Math.PI) / 180;
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  // Where the slope from the lip meets the ring, and where the level bench does on the left.
  const b = (LIP.x - 12) * dx + (LIP.y - 12) * dy;
  const t = -b + Math.sqrt(b * b - ((LIP.x - 12) ** 2 + (LIP.y - 12) ** 2 - R * R));
  const end = `${(LIP.x + t * dx).toFixed(2)} ${(LIP.y + t * dy).toFixed(2)}`;
  const start = `${(12 - Math.sqrt(R * R - (LIP.y - 12) ** 2)).toFixed(2)} ${LIP.y}`;
  const words = undecided ? `undecided, plan as ${planAs}` : `plan as ${planAs}`;
  return (
    <svg class={`ring ${planAs}`} width="30" height="30" viewBox="0 0 24 24" role="img" aria-label={words}>
      <circle class="rim" cx="12" cy="12" r={R} />
      <path class="earth" d={`M${start}L${LIP.x} ${LIP.y}L${end}A${R} ${R} 0 0 1 ${start}Z`} />
      <path class={undecided ? 'ground undecided' : 'ground'} d={`M${start}L${LIP.x} ${LIP.y}L${end}`} />
    </svg>
  );
}
