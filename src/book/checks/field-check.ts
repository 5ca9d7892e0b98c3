import type { SignOffRecord } from '../schema/index.ts';
import { monthsLater } from './months-later.ts';

/** How a site stands with its checks on a day. */
export interface FieldCheck {
  /** The latest sign-off of any method; null where nobody signed. */
  readonly latest: SignOffRecord | null;
  /** The latest by somebody who was there (walked or drove). */
  readonly inField: SignOffRecord | null;
  /** The day by which somebody should be there again; null where nobody was. */
  readonly dueOn: string | null;
  /** Nobody was there, or not since `dueOn`. */
  readonly due: boolean;
}

/** Checks of one site. `today` is YYYY-MM-DD; a desk check is told but renews nothing; a day to come counts as today. */
export function fieldCheck(
  signOffs: readonly SignOffRecord[],
  siteId: string,
  reviewMonths: number,
  today: string,
): FieldCheck {
  const own = signOffs
    .filter((one) => one.siteId === siteId && !one.deleted)
    .sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.id < b.id ? 1 : -1));
  const inField = own.find(({ method }) => method !== 'desk') ?? null;
  const dueOn = inField && monthsLater(inField.on < today ? inField.on : today, reviewMonths);
  return { latest: own[0] ?? null, inField, dueOn, due: dueOn === null || today >= dueOn };
}
