import { FOOT_M, type UnitSystem } from '../../units/index.ts';
import { typedNumber } from './typed-number.ts';

/** A unit as a field names it, with its metres. */
export interface FieldUnit {
  readonly word: string;
  readonly unitM: number;
}

/** Units of small sizes (a trunk) and of larger ones (a height, a side). */
export const fieldUnits = (units: UnitSystem): { readonly small: FieldUnit; readonly large: FieldUnit } =>
  units === 'us'
    ? { small: { word: 'in', unitM: FOOT_M / 12 }, large: { word: 'ft', unitM: FOOT_M } }
    : { small: { word: 'cm', unitM: 0.01 }, large: { word: 'm', unitM: 1 } };

/** A size as the field shows it, to a tenth; empty where there is none. */
export const shownSize = (metres: number | null, { unitM }: FieldUnit): string =>
  metres === null ? '' : String(Math.round((metres / unitM) * 10) / 10);

/** A typed size in metres to a millimetre, null for none; undefined where it is no size, so that nothing is kept of it. */
export function typedSize(text: string, { unitM }: FieldUnit): number | null | undefined {
  const value = typedNumber(text);
  if (value === null) return null;
  return value >= 0 ? Math.round(value * unitM * 1000) / 1000 : undefined;
}
