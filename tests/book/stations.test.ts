import { describe, expect, it } from 'vitest';
import { arrivalsFromStations, defaultFleet, type Station } from '../../src/book/index.ts';

const station = (id: string, apparatusIds: string[], other: Partial<Station> = {}): Station => ({
  id,
  name: id,
  lon: -128,
  lat: 44,
  apparatusIds,
  kitIds: [],
  turnoutMin: 2,
  mutualAid: false,
  ...other,
});

describe('arrivals from stations', () => {
  const stations = [
    station('far', ['E2'], { turnoutMin: 1 }),
    station('near', ['E1', 'M1'], { kitIds: ['aid-kit'] }),
    station('next door', ['T1'], { mutualAid: true }),
  ];

  it('count from the first unit, earliest first, with crew and kit', () => {
    const arrivals = arrivalsFromStations(stations, defaultFleet, { far: 15, near: 6, 'next door': 30 });
    expect(arrivals.map(({ apparatusId, atMin, people, tier }) => [apparatusId, atMin, people, tier])).toEqual([
      ['E1', 0, 4, 'first arriving'],
      ['M1', 0, 2, 'first alarm'],
      ['E2', 8, 4, 'first alarm'],
      ['T1', 24, 4, 'mutual aid'],
    ]);
    expect(arrivals.map(({ kitIds }) => kitIds)).toEqual([['engine-kit', 'aid-kit'], [], ['engine-kit'], []]);
  });

  it('leave out a station without driving minutes and an apparatus that the fleet does not list', () => {
    const odd = [...stations, station('ghost', ['X9'])];
    const arrivals = arrivalsFromStations(odd, defaultFleet, { near: 6, ghost: 1, far: Number.NaN });
    expect(arrivals.map(({ apparatusId }) => apparatusId)).toEqual(['E1', 'M1']);
    expect(arrivalsFromStations(odd, defaultFleet, {})).toEqual([]);
  });

  it('stay mutual aid even when they come first', () => {
    const [first] = arrivalsFromStations(stations, defaultFleet, { 'next door': 3, near: 20 });
    expect(first).toMatchObject({ apparatusId: 'T1', atMin: 0, tier: 'mutual aid' });
  });
});
