import type { FineGround } from '../ground/tiles.ts';
import { type Cut, heightOn } from './section.ts';

/** What lies beside a bench. */
export type SideKind = 'drop' | 'bank' | 'cut' | 'flat';

/** The kind of a side, and how far it is from being another: 1 on a limit of the drop rule, larger is surer. */
export interface Beside {
  readonly kind: SideKind;
  readonly margin: number;
}

/**
 * A drop falls by 25 % and 2 m within 20 m of the bench's end, or by 40 % and 1.2 m; a bank falls by 18 % and 0.5 m; a cut
 * rises by 18 % and 0.8 m within 10 m; the rest is flat.
 */
export function besideBench(ground: FineGround, cut: Cut, offset: number): Beside {
  const edge = heightOn(ground, cut, offset);
  let long = 0;
  let short = 0;
  let bank = 0;
  let rise = 0;
  for (let d = 0.5; d <= 20; d += 0.25) {
    const fall = edge - heightOn(ground, cut, offset + d);
    long = Math.max(long, Math.min(fall / 2, fall / d / 0.25));
    short = Math.max(short, Math.min(fall / 1.2, fall / d / 0.4));
    bank = Math.max(bank, Math.min(fall / 0.5, fall / d / 0.18));
    if (d <= 10) rise = Math.max(rise, Math.min(-fall / 0.8, -fall / d / 0.18));
  }
  const drop = Math.max(long, short);
  if (drop >= 1) return { kind: 'drop', margin: drop };
  const kind = bank >= 1 ? 'bank' : rise >= 1 ? 'cut' : 'flat';
  return { kind, margin: 1 / Math.max(0.05, drop) };
}
