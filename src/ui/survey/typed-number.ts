/** A number as typed, a comma for a point allowed; null where nothing was typed, NaN where it is no number. */
export function typedNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  if (plain === '') return null;
  return /^-?\d*\.?\d+$/.test(plain) ? Number(plain) : Number.NaN;
}
