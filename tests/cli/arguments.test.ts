import { describe, expect, it } from 'vitest';
import { readDay, readOptions, readPosition, readPositive, readWord, UsageError } from '../../src/cli/arguments.ts';
import { UserError } from '../../src/units/index.ts';

describe('command line options', () => {
  it('reads a position, longitude first', () => {
    expect(readPosition('--at', '-128.5, 44.01')).toEqual({ lon: -128.5, lat: 44.01 });
  });

  it('takes a western longitude as the value of its option', () => {
    const options = { at: { type: 'string' }, json: { type: 'boolean' } } as const;
    expect(readOptions(['--at', '-128.5,44', '--json'], options)).toEqual({ at: '-128.5,44', json: true });
  });

  it.each(['44.0', '44.0,-128.0,3', 'x,y', '-190,44', ''])('refuses the position "%s"', (text) => {
    expect(() => readPosition('--at', text)).toThrow(UserError);
  });

  it('says that longitude comes first where the two look swapped', () => {
    expect(() => readPosition('--at', '44.0,-128.0')).toThrow(/longitude first/);
  });

  it('refuses unknown options, stray words and words off the list as wrong usage', () => {
    expect(() => readOptions(['--nope'], { json: { type: 'boolean' } })).toThrow(UsageError);
    expect(() => readOptions(['stray'], { json: { type: 'boolean' } })).toThrow(UsageError);
    expect(() => readWord('--side', 'up', ['left', 'right'])).toThrow(/left, right/);
    expect(() => readPositive('--vertical-rmse', '-1')).toThrow(UsageError);
    expect(readDay('--collected-on', '2024-02-29')).toBe('2024-02-29');
    for (const text of ['2023-02-29', '2024', '29.02.2024', ''])
      expect(() => readDay('--collected-on', text)).toThrow(/is no day; give it as 2024-05-31\./);
  });
});
