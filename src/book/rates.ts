import { UserError } from '../units/index.ts';
import { type Rate, rateTable } from './rate-table.ts';

/** Every rate, friction and policy by name; the unit stands in the name or in its row of `rateTable`. */
export type Rates = { readonly [K in RateName]: number };
export type RateName = keyof typeof rateTable;

export const rateNames = Object.keys(rateTable) as RateName[];

/** The row of a rate: shipped value, bounds, unit, source. */
export const rateRow = (name: RateName): Rate => rateTable[name];

/** The shipped rates. Each errs to the cautious side. */
export const defaultRates: Rates = Object.fromEntries(rateNames.map((name) => [name, rateTable[name].value])) as Rates;

/** The shipped rates with a district's own in their place. Throws a `UserError` on an unknown name or a value out of its bounds. */
export function ratesWith(own: Readonly<Record<string, number>>): Rates {
  const rates: Record<string, number> = { ...defaultRates };
  for (const [name, value] of Object.entries(own)) {
    if (!Object.hasOwn(rateTable, name)) {
      throw new UserError(
        'rate-unknown',
        `The book sets a rate "${name}", which this program does not know; remove it or mend its name.`,
      );
    }
    const { least, most, unit } = rateRow(name as RateName);
    if (!(value >= least && value <= most)) {
      throw new UserError(
        'rate-range',
        `The book sets ${name} to ${value}; it must be ${least} to ${most} ${unit}; correct it.`,
      );
    }
    rates[name] = value;
  }
  return rates as Rates;
}
