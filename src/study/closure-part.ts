import { closure } from '../spots/index.ts';
import { metres } from './rounded.ts';
import type { StudyClosure } from './study.ts';
import type { GroundWork } from './work.ts';

/** A formal closure for so many lanes blocked. */
export function closurePart(work: GroundWork, lanesBlocked: number): StudyClosure {
  const { bench, i, traits, sight } = work;
  const gradeDeg = Number.isFinite(bench.gradeDeg[i]) ? bench.gradeDeg[i] : null;
  const found = closure(traits, lanesBlocked, gradeDeg, sight, shoulderM(work));
  return {
    kind: found.kind,
    lanesBlocked: found.lanesBlocked,
    taperM: found.taperM === null ? null : metres(found.taperM),
    advanceSignsM: found.advanceSignsM.map(metres),
    stoppingSightM: metres(found.stoppingSightM),
    sightM: found.sightM,
    short: [...found.short],
    speed: found.speed,
  };
}

/** Width of the shoulder on the site's side: from the travelled way to the edge, metres. */
function shoulderM({ bench, i, side, traits }: GroundWork): number {
  const own = side.side === 'right' ? bench.right : bench.left;
  const outM = Math.abs(own.edgeOffsetM[i] - bench.shiftM[i]);
  const widthM = outM - traits.carriageway.valueM / 2;
  return Math.max(widthM, 0);
}
