/** A published or practised pair of limits: below `lowMaxDeg` is low, from `highMinDeg` is high; equality goes steeper. */
export interface AngleRule {
  readonly name: string;
  readonly lowMaxDeg: number;
  readonly highMinDeg: number;
  /** Key in docs/sources.md, or 'practice' where a limit is taught but has no single source. */
  readonly source: string;
}

/** The rules a book may pick from. */
export const angleRules: readonly AngleRule[] = [
  { name: '30/45', lowMaxDeg: 30, highMinDeg: 45, source: 'rescue-newsletter-2024' },
  { name: '30/50', lowMaxDeg: 30, highMinDeg: 50, source: 'allen-steep-angle' },
  { name: '35/45', lowMaxDeg: 35, highMinDeg: 45, source: 'practice' },
  { name: '35/60', lowMaxDeg: 35, highMinDeg: 60, source: 'garrison-technical-rescue' },
  { name: '40/60', lowMaxDeg: 40, highMinDeg: 60, source: 'connecticut-core-2015' },
  { name: '45/60', lowMaxDeg: 45, highMinDeg: 60, source: 'practice' },
];

export const defaultAngleRule: AngleRule = angleRules[0]!;

export type AngleClass = 'low' | 'steep' | 'high';

/** Class of an exact angle, degrees; ties go to the steeper class. */
export function classOf(angleDeg: number, rule: AngleRule): AngleClass {
  if (angleDeg >= rule.highMinDeg) return 'high';
  return angleDeg >= rule.lowMaxDeg ? 'steep' : 'low';
}
