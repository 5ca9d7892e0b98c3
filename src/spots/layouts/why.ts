import { idealAdvantage } from '../../rigging/index.ts';
import type { Layout } from './layout-types.ts';
import { compareRank, type RankStep } from './rank.ts';
import type { Search } from './search.ts';

const LEVEL = 'Level with another on every step of the rank: as good.';

type Ranked = Omit<Layout, 'rank' | 'why'>;

/** Sentences on a layout among those by rank: the step that set it before the next, then what a crew must know. */
export function whyRanked(layouts: readonly Ranked[], i: number, { means }: Pick<Search, 'means'>): string[] {
  const layout = layouts[i];
  const next = layouts[i + 1];
  const before = layouts[i - 1];
  const first =
    next !== undefined
      ? ahead(layout, next)
      : before !== undefined
        ? behind(layout, before)
        : 'The only one that was found.';
  return [first, ...notes(layout, means.planHigh)];
}

const ahead = (a: Ranked, b: Ranked): string => {
  const { step } = compareRank(a.key, b.key);
  return step === null ? LEVEL : `Before the next by ${stepWords(step, a, b)}.`;
};

const behind = (a: Ranked, b: Ranked): string => {
  const { step } = compareRank(b.key, a.key);
  return step === null ? LEVEL : `Behind the one before by ${stepWords(step, a, b)}.`;
};

const verdictWords = {
  yes: 'every factor met',
  'judge on site': 'trees or rock to judge on site',
  no: 'a factor unmet',
};
/** From here on the rope that comes is short. */
const SHORT = 3;
const kitWords = (kit: number): string =>
  ['rope at hand when rigging ends', 'rope by the first alarm', 'rope with mutual aid'][kit] ?? 'rope short';

/** A step of the rank in words: what this layout has, against what the other has. */
function stepWords(step: RankStep, { key: a }: Ranked, { key: b }: Ranked): string {
  switch (step) {
    case 'factors':
      return `its anchors: ${verdictWords[a.verdict]}, against ${verdictWords[b.verdict]}`;
    case 'practical':
      return `its resets: ${a.resets} against ${b.resets}, and over 10 is not practical`;
    case 'kit':
      if (a.kit >= SHORT && b.kit >= SHORT) return `its rope: ${a.kit < b.kit ? 'less' : 'more'} of it is short`;
      return `its rope: ${kitWords(a.kit)}, against ${kitWords(b.kit)}`;
    case 'crew':
      return a.crewByAlarm
        ? 'its crew, which is there by the first alarm'
        : 'its crew, which is not there by the first alarm';
    case 'advantage':
      return `its system: ${a.advantage} against ${b.advantage}`;
    case 'resets':
      return `its resets: ${a.resets} against ${b.resets}`;
    case 'lanes':
      return `the lanes that it takes: ${a.lanes} against ${b.lanes}`;
    case 'hold':
      return 'its least hold factor on this grade';
    case 'straight':
      return a.straight ? 'being straight: one bend less to rig' : 'its change of direction';
    case 'hand lift':
      return 'what is left to lift by hand at the edge';
    case 'minutes':
      return 'its minutes';
  }
}

function notes(layout: Ranked, planHigh: boolean): string[] {
  const { haul, run, belay, governing, closure, lanesBlocked, fits, kitAtHand } = layout;
  const said: string[] = [];
  if (governing.verdict === 'no') {
    const unmet = layout.forces.find(({ ok }) => ok === 'no');
    said.push(`Unmet at ${unmet?.at ?? 'an anchor'}: add an apparatus or tree.`);
  }
  if (layout.forces.some(({ points, ok }) => points === 2 && ok === 'yes')) {
    said.push('Two attachments of one apparatus share a force: tie both.');
  }
  if (!haul.practical) said.push(`Not practical: ${haul.resets} resets.`);
  if (haul.throwLimitedBy === 'rope') said.push('The rope at hand shortens each pull.');
  if (!kitAtHand) {
    said.push(
      fits.from === null
        ? 'The rope that comes does not reach.'
        : `The rope reaches from the arrival of ${fits.from.unit} on.`,
    );
  }
  if (run.handTurns > 0) said.push('The bench is shorter than the walk: the hauling end is turned along the road.');
  if (belay.kind !== 'apparatus') said.push(`Belay on a marked ${belay.kind}, its own anchor: judge on site.`);
  else if (belay.sharesWith !== null) said.push('Belay on an attachment of its own on the same apparatus.');
  else said.push('Belay on an apparatus of its own.');
  if (belay.kind !== 'apparatus' && belay.sharesWith !== null) said.push('Main line and belay share this anchor.');
  if (!planHigh && haul.team.checkGrab) {
    said.push('Check the haul grab: more hands than one grab bears; use two grabs, or one attendant fewer.');
  }
  if (haul.liftedByHandM > 0.05) said.push('The last of the way past the edge is lifted by hand.');
  if (lanesBlocked > 0) said.push(closure === 'road closed' ? 'The road is closed.' : `Traffic: ${closure}.`);
  if (idealAdvantage(run.advantage) > 5) said.push('A compound system collapses early: many resets for its field.');
  return said;
}
