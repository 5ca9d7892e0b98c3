import type { Apparatus } from '../../book/index.ts';
import type { HoldSettings } from '../../rigging/index.ts';
import { candidateSpots, type Stations } from '../candidate-spots.ts';
import { spotId } from '../spot-id.ts';
import type { Spot } from '../spot-types.ts';
import type { StandingGround } from '../standing-ground.ts';
import { likenessOf } from './means.ts';

/** Candidate spots of every apparatus of a fleet, sought once for those that stand alike. */
export function layoutSpots(
  ground: StandingGround,
  fleet: readonly Apparatus[],
  hold: HoldSettings,
  at?: Stations,
): Spot[] {
  const known = new Map<string, Spot[]>();
  return fleet.flatMap((apparatus) => {
    const likeness = likenessOf(apparatus);
    const alike = known.get(likeness);
    if (alike !== undefined) return alike.map((spot) => ({ ...spot, ...renamed(spot, apparatus.id) }));
    const found = candidateSpots(ground, [apparatus], hold, at);
    known.set(likeness, found);
    return found;
  });
}

const renamed = ({ stationM, offsetM, footprint }: Spot, apparatusId: string): Pick<Spot, 'id' | 'apparatusId'> => ({
  id: spotId({ apparatusId, stationM, offsetM, headingDeg: footprint.headingDeg }),
  apparatusId,
});
