import { describe, expect, it } from 'vitest';
import { isNoHaul, noHaulReason, noHaulReasons } from '../../src/study/index.ts';

const warning = (code: string, text: string) => ({ code, text, severity: 'note' as const });

describe('why kinds of haul are missing', () => {
  const both = [warning('sight-short', 'Look.'), warning('no-haul', 'Ice: no anchor.')];
  const one = [warning('no-turned-haul', 'The bend is too narrow.')];

  it('a reason of both kinds is that of each, told once', () => {
    for (const kind of ['straight', 'turned'] as const) expect(noHaulReason(both, kind)).toBe('Ice: no anchor.');
    expect(noHaulReasons(both)).toEqual(['Ice: no anchor.']);
    expect(both.filter(isNoHaul)).toHaveLength(1);
  });

  it('a reason of one kind is not that of the other', () => {
    expect(noHaulReason(one, 'turned')).toBe('The bend is too narrow.');
    expect(noHaulReason(one, 'straight')).toBe('No straight haul was found here.');
    expect(one.every(isNoHaul)).toBe(true);
  });
});
