import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { type HaulArrangement, type HaulGround, haul } from '../../src/rigging/index.ts';
import { UserError } from '../../src/units/index.ts';
import { haulCases } from '../helpers/haul-cases.ts';

const one = haulCases[0]!;
const work = (ground: Partial<HaulGround>, run: Partial<HaulArrangement>) => () =>
  haul({ ...one.ground, ...ground }, { ...one.run, ...run }, one.conditions, defaultRates);

describe('a haul refuses', () => {
  it('a missing figure, in one sentence that says what came and what to do', () => {
    expect(work({ governingDeg: Number.NaN }, {})).toThrow(
      new UserError(
        'rigging-input',
        'The governing angle is NaN; it must be 0 to 90; measure it or leave the layout out.',
      ),
    );
  });

  it.each([
    ['an angle over 90°', { governingDeg: 91 }, {}],
    ['a length under 0', { ropeLineM: -1 }, {}],
    ['ground of no length known', { groundLengthM: Number.NaN }, {}],
    ['a contact without a bend', { contacts: [{ bendDeg: Number.NaN, friction: null }] }, {}],
    ['a contact that lowers tension', { contacts: [{ bendDeg: 20, friction: -0.2 }] }, {}],
    ['a position that lowers tension', { positions: [{ angleDeg: 30, contactsFactor: 0.5 }] }, {}],
    ['no haul field', {}, { fieldM: Number.NaN }],
    ['no walking room', {}, { walkingRoomM: Number.NaN }],
    ['a rope of unknown length', {}, { throwRopeM: Number.NaN }],
  ])('%s', (_, ground, run) => {
    expect(work(ground, run)).toThrow(UserError);
  });

  it('nothing else: a throw too short to work is an answer, not an error', () => {
    const result = work({}, { fieldM: 3.4 })();
    expect([result.workable, result.throwM < defaultRates.leastThrowM]).toEqual([false, true]);
    const none = work({}, { fieldM: 2 })();
    expect([none.workable, none.throwM, none.pulls]).toEqual([false, 0, Number.POSITIVE_INFINITY]);
  });
});
