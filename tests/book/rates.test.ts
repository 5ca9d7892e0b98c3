import { describe, expect, it } from 'vitest';
import { defaultRates, rateNames, rateRow, ratesWith } from '../../src/book/index.ts';

describe('rates', () => {
  it.each(rateNames)('%s lies within its bounds and names its source', (name) => {
    const { value, least, most, source, note } = rateRow(name);
    expect(value).toBeGreaterThanOrEqual(least);
    expect(value).toBeLessThanOrEqual(most);
    expect(source).toMatch(/^[a-z0-9-]+$/);
    expect(note.length).toBeGreaterThan(5);
    expect(defaultRates[name]).toBe(value);
  });

  it('take a district’s own in place of the shipped ones', () => {
    expect(ratesWith({ sitBackM: 0.4 })).toEqual({ ...defaultRates, sitBackM: 0.4 });
  });

  it('refuse what they do not know and what lies out of bounds, in one sentence', () => {
    expect(() => ratesWith({ sitBack: 0.4 })).toThrow(
      'The book sets a rate "sitBack", which this program does not know; remove it or mend its name.',
    );
    expect(() => ratesWith({ holdFactor: 1.5 })).toThrow(
      'The book sets holdFactor to 1.5; it must be 2 to 10 : 1; correct it.',
    );
    expect(() => ratesWith({ toString: 1 })).toThrow('does not know');
    expect(() => ratesWith({ holdFactor: Number.NaN })).toThrow('it must be');
  });
});
