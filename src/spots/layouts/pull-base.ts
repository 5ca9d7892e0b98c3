import {
  type AdvantageName,
  actualAdvantage,
  advantageNames,
  contactsFactor,
  type HaulGround,
  haulTeam,
  idealAdvantage,
  load,
  ropeBelowEdge,
  stagesOf,
  type Tensions,
  tensions,
} from '../../rigging/index.ts';
import type { Means } from './means.ts';

/** What all hauls from one last bend before the edge have in common, whatever their field and system. */
export interface PullBase {
  readonly kind: 'straight' | 'turned';
  readonly ground: HaulGround;
  readonly edgeToTurnM: number;
  readonly belowEdgeM: number;
  readonly stretchM: number;
  readonly tensionKn: Tensions;
  /** Main line beyond the change of direction, all hanging. */
  readonly farHangingKn: number;
  readonly byAdvantage: Readonly<Record<AdvantageName, AdvantageBase>>;
}

interface AdvantageBase {
  readonly ideal: number;
  /** Product of the advantages of all stages but the last: by it a compound system collapses early. */
  readonly onLoad: number;
  /** Haul team without and with a turn of the hauling end. */
  readonly team: readonly [number, number];
}

export function pullBase(kind: 'straight' | 'turned', ground: HaulGround, edgeToTurnM: number, means: Means): PullBase {
  const { rates, conditions } = means;
  const far = { angleDeg: ground.governingDeg, contactsFactor: contactsFactor(ground.contacts, rates) };
  const positions = [far, ...(ground.positions ?? [])];
  const tensionKn = tensions(load(rates), { ...ground, positions }, conditions, rates);
  const sheave = kind === 'turned' ? rates.pulleyEfficiency : 1;
  const belowEdgeM = ropeBelowEdge(ground.ropeLineM, ground.groundLengthM, rates);
  const base = (name: AdvantageName): AdvantageBase => {
    const team = (handTurns: number): number => {
      const divisor = sheave * actualAdvantage(name, rates.pulleyEfficiency, handTurns);
      const pullKn = { walking: tensionKn.walking / divisor, hanging: tensionKn.hanging / divisor };
      return haulTeam(name, pullKn, rates).walking;
    };
    const onLoad = stagesOf(name)
      .slice(0, -1)
      .reduce((a, b) => a * b, 1);
    return { ideal: idealAdvantage(name), onLoad, team: [team(0), team(1)] };
  };
  return {
    ...{ kind, ground, edgeToTurnM, belowEdgeM, tensionKn },
    stretchM: rates.ropeStretch * (belowEdgeM + (kind === 'turned' ? edgeToTurnM : 0)),
    farHangingKn: tensionKn.hanging / sheave,
    byAdvantage: Object.fromEntries(advantageNames.map((name) => [name, base(name)])) as PullBase['byAdvantage'],
  };
}
