import { describe, expect, it } from 'vitest';
import { districtWords } from '../../src/ui/notes/district-words.ts';
import type { OpenDistrict } from '../../src/ui/state/index.ts';

const view = {} as OpenDistrict['view'];
const own = { name: 'county.tif', invented: false, view };
const demo = { name: 'Tamarrow Fire District', invented: true, view };
const silent = { districtName: '', invented: false };

describe('the words at the head', () => {
  it('are those of the district, and of its book where that says more', () => {
    expect(districtWords({ district: null, opening: null }, silent)).toEqual({ name: 'Brinkbook', invented: null });
    expect(districtWords({ district: demo, opening: null }, silent)).toEqual({
      name: 'Tamarrow Fire District',
      invented: 'demo district',
    });
    const said = { districtName: 'Ours', invented: true };
    expect(districtWords({ district: own, opening: null }, said)).toEqual({ name: 'Ours', invented: 'district' });
  });

  it('say nothing of another district’s book, which is there before its ground is', () => {
    const others = { districtName: 'Tamarrow Fire District', invented: true };
    const opening = 'Reading elevation and roads.';
    expect(districtWords({ district: own, opening }, others)).toEqual({ name: 'county.tif', invented: null });
    const real = { districtName: 'Ours', invented: false };
    expect(districtWords({ district: demo, opening }, real).invented).toBe('demo district');
  });
});
