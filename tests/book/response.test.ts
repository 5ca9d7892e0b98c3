import { describe, expect, it } from 'vitest';
import {
  callsFor,
  defaultArrivals,
  defaultFleet,
  defaultKits,
  defaultResponse,
  type ResponseQuestion,
} from '../../src/book/index.ts';

const quiet: ResponseQuestion = {
  planAs: 'low',
  ropeShort: false,
  peopleShort: false,
  water: false,
  hazards: [],
  laneClosed: false,
};
const calls = (other: Partial<ResponseQuestion>): string[] =>
  callsFor(defaultResponse, { ...quiet, ...other }).map(({ id }) => id);

describe('response table', () => {
  it('calls nobody more for a quiet low site, and each resource for its reason', () => {
    expect(calls({})).toEqual([]);
    expect(calls({ planAs: 'high' })).toEqual(['technical-high']);
    expect(calls({ ropeShort: true, peopleShort: true })).toEqual(['technical-rope', 'people']);
    expect(calls({ hazards: ['gate', 'wire'] })).toEqual(['power']);
    expect(calls({ water: true, laneClosed: true })).toEqual(['water', 'traffic']);
  });

  it('calls for an undecided angle as if it were high', () => {
    expect(calls({ planAs: null })).toEqual(['technical-high']);
  });

  it('wants every condition of a row', () => {
    const row = { ...defaultResponse[0]!, when: { planAs: ['low', 'steep'], water: true, hazards: ['wire'] } as const };
    const called = (other: Partial<ResponseQuestion>) => callsFor([row], { ...quiet, ...other }).length;
    expect([
      called({ water: true, hazards: ['wire'] }),
      called({ water: true }),
      called({ hazards: ['wire'] }),
    ]).toEqual([1, 0, 0]);
    expect(called({ planAs: 'high', water: true, hazards: ['wire'] })).toBe(0);
  });
});

describe('shipped fleet, kits and arrivals', () => {
  it('hang together by their ids', () => {
    const fleet = new Map(defaultFleet.map((apparatus) => [apparatus.id, apparatus]));
    const kits = new Set(defaultKits.map(({ id }) => id));
    expect(fleet.size).toBe(defaultFleet.length);
    for (const { apparatusId, kitIds } of defaultArrivals) {
      if (apparatusId !== null) expect(fleet.has(apparatusId)).toBe(true);
      for (const id of kitIds) expect(kits.has(id)).toBe(true);
    }
    for (const { kitIds } of defaultFleet) for (const id of kitIds) expect(kits.has(id)).toBe(true);
  });

  it('bring four, then four, two, one, four, and eight with mutual aid: 15 by the twelfth minute', () => {
    expect(defaultArrivals.map(({ atMin, people }) => [atMin, people])).toEqual([
      [0, 4],
      [8, 4],
      [9, 2],
      [10, 1],
      [12, 4],
      [25, 8],
    ]);
  });

  it('outlines after the published fleet table (read) [source: city-fleet-table], empty masses under gross', () => {
    const engine = defaultFleet[0]!;
    expect([engine.lengthM, engine.widthM, engine.wheelbaseM, engine.turningRadiusM].map((m) => +m.toFixed(2))).toEqual(
      [9.75, 2.97, 5.11, 10.92],
    );
    expect(Math.round(engine.grossMassKg)).toBe(18_597);
    expect(engine.emptyMassKg).toBe(15_000);
    for (const { emptyMassKg, grossMassKg, wheelbaseM, lengthM } of defaultFleet) {
      expect(emptyMassKg).toBeLessThan(grossMassKg);
      expect(wheelbaseM).toBeLessThan(lengthM);
    }
  });

  it('a light rig of 3 t, and no attachment on an ambulance', () => {
    expect(defaultFleet.find(({ kind }) => kind === 'light rig')?.emptyMassKg).toBe(3_000);
    expect(defaultFleet.find(({ kind }) => kind === 'ambulance')?.attachments).toEqual([]);
  });
});
