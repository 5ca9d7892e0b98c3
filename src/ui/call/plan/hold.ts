import type { Study } from '../../../study/index.ts';

/** How the anchors of the first layout hold, for the cell of a weather. */
export interface HoldWords {
  readonly text: string;
  readonly met: boolean;
}

/** The worst hold factor of the first layout against what is needed; "no anchor" where nothing holds. */
export function holdOf({ layouts, angle }: Study): HoldWords {
  if (angle?.planAs === 'high') return { text: 'team only', met: false };
  const [first] = layouts;
  if (!first) return { text: 'no anchor', met: false };
  const holds = first.forces.filter(({ kind }) => kind === 'hold');
  const told = holds.filter(({ factor, required }) => factor !== null && required !== null);
  if (told.length === 0)
    return holds.length > 0 || first.forces.length === 0 ? no : { text: 'judge trees', met: false };
  const worst = told.reduce((a, b) => (b.factor! / b.required! < a.factor! / a.required! ? b : a));
  if (worst.factor === 0) return no;
  // Never rounded up: 2.97 of 3 is not 3.
  const figure = (Math.floor(worst.factor! * 10 + 1e-9) / 10).toFixed(1);
  const met = first.forces.every(({ ok }) => ok !== 'no');
  return { text: met ? `hold ${figure}/${worst.required}` : `${figure} not met`, met };
}

const no: HoldWords = { text: 'no anchor', met: false };
