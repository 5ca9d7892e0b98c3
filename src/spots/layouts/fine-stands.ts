import { roadAzimuthDeg } from '../bench-place.ts';
import { endsAlike, judgeSpot, turnedRound } from '../judge-spot.ts';
import type { Spot } from '../spot-types.ts';
import { type StandingRoom, standingRoom } from '../standing-room.ts';
import type { Unit } from './means.ts';
import type { Search } from './search.ts';
import { type Stand, unitStands } from './stands.ts';

/** Stations and offsets round a place, metres along the road and decimetres across it. */
export interface Round {
  readonly alongM: number;
  readonly acrossDm: number;
  readonly stepDm: number;
}

/** Where a unit may stand parallel to the road round one of its spots, finer than the candidates: those that work. */
export function fineStands(
  search: Search,
  unit: Unit,
  { stationM, offsetM }: Pick<Spot, 'stationM' | 'offsetM'>,
  round: Round,
): Stand[] {
  const { fine, frame } = search;
  const places = fine.get(unit) ?? { room: standingRoom(frame.ground, unit.apparatus), stands: new Map() };
  fine.set(unit, places);
  const found: Stand[] = [];
  const middle = round.stepDm * Math.round((10 * offsetM) / round.stepDm);
  for (let s = Math.round(stationM) - round.alongM; s <= stationM + round.alongM; s++) {
    for (let dm = middle - round.acrossDm; dm <= middle + round.acrossDm; dm += round.stepDm) {
      const key = `${s} ${dm}`;
      const stands = places.stands.get(key) ?? standsOn(search, unit, places.room, s, dm);
      places.stands.set(key, stands);
      found.push(...stands);
    }
  }
  return found;
}

function standsOn({ frame, means }: Search, unit: Unit, room: StandingRoom, stationM: number, dm: number): Stand[] {
  const { bench } = frame;
  const i = stationM - bench.firstStationM;
  const half = unit.apparatus.widthM / 2;
  const fits = dm / 10 - half >= room.leftM[i] - 1e-6 && dm / 10 + half <= room.rightM[i] + 1e-6;
  if (!room.reachable[i] || !fits) return [];
  const headingDeg = (Math.round(10 * roadAzimuthDeg(bench, i)) / 10) % 360;
  const place = { stationM, offsetM: dm / 10, headingDeg };
  const spot = judgeSpot(room, place, means.rates);
  if (!spot.workable) return [];
  const other = endsAlike(unit.apparatus)
    ? turnedRound(spot)
    : judgeSpot(room, { ...place, headingDeg: (headingDeg + 180) % 360 }, means.rates);
  return unitStands(frame, unit, [spot, other], undefined);
}
