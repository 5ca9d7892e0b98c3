import type { Layouts } from '../spots/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';
import type { StudyLayout, StudySpot, StudyWarning } from './study.ts';

interface LayoutFacts {
  readonly found: Pick<Layouts, 'noStraight' | 'noTurned'> | null;
  /** By rank. */
  readonly layouts: readonly StudyLayout[];
  readonly spots: readonly StudySpot[];
  readonly shipped: boolean;
  /** No arrival is listed for this road. */
  readonly nobody: boolean;
  /** Planned as high: no team size is told. */
  readonly high: boolean;
  readonly units: UnitSystem;
}

/** What a crew must be told of the layouts: the first one's weak points, and why a kind of haul is missing. */
export function layoutWarnings(facts: LayoutFacts): StudyWarning[] {
  const { found, layouts, shipped, nobody } = facts;
  if (!found) return [];
  const list: StudyWarning[] = [];
  const say = (code: string, severity: StudyWarning['severity'], text: string): void => {
    list.push({ code, severity, text });
  };
  // Both kinds may fail for the same reason: it is told once.
  if (found.noStraight !== null && found.noStraight === found.noTurned) say('no-haul', 'note', found.noStraight);
  else {
    if (found.noStraight) say('no-straight-haul', 'note', found.noStraight);
    if (found.noTurned) say('no-turned-haul', 'note', found.noTurned);
  }
  const [first] = layouts;
  if (first) {
    ropes(first, facts, say);
    if (!facts.high) team(first, say);
    forces(first, say);
    standing(first, facts, say);
  }
  if (nobody) {
    say('no-arrivals', 'check', 'The book names nobody who comes to this road: no haul can be planned with anybody.');
  }
  if (shipped) {
    say(
      'default-fleet',
      'note',
      'Fleet, kit, arrivals and rates are the shipped ones, not a district’s own: minutes, people and ropes are those of an assumed response.',
    );
  }
  return list;
}

type Say = (code: string, severity: StudyWarning['severity'], text: string) => void;

function ropes({ fits, stages }: StudyLayout, { units }: LayoutFacts, say: Say): void {
  const length = (m: number): string => formatLength(m, units, 'up');
  if (fits.mutualAid === 'no') {
    const short = fits.short.map(({ line, byM }) => `${line} ${length(byM)}`).join(', ');
    const staged = stages?.[0]
      ? ` In ${stages[0].count} stages with ropes of ${formatLength(stages[0].ropeLengthM, units, 'down')}: name each stage’s own crew.`
      : '';
    say('rope-short', 'check', `No rope that comes reaches: short by ${short}.${staged}`);
  }
  const joined =
    ([fits.firstArriving, fits.firstAlarm, fits.mutualAid] as const).find((fit) => fit !== 'no') === 'joined';
  if (joined) {
    say(
      'rope-joined',
      'check',
      'Reaches only with two ropes joined: a knot passes no device, capture or change of direction without a knot pass.',
    );
  }
}

function team({ team: haulers, mechanicalAdvantage }: StudyLayout, say: Say): void {
  if (haulers.checkGrab) {
    say(
      'two-grabs',
      'check',
      `${haulers.walking} pull but only ${haulers.handsAtOnce} may be on a ${mechanicalAdvantage} at once before the haul grab could slip: two grabs, or one attendant fewer.`,
    );
  }
  if (haulers.sustained > haulers.walking) {
    say(
      'long-pull',
      'note',
      `Long pulls want relief: ${haulers.sustained} by sustained grip where ${haulers.walking} make short pulls with rests.`,
    );
  }
}

function forces({ forces: checks }: StudyLayout, say: Say): void {
  const unmet = checks.filter(({ ok }) => ok === 'no');
  if (unmet.length > 0) {
    const where = [...new Set(unmet.map(({ kind, at }) => `${kind} at ${at}`))].join(', ');
    say('factor-unmet', 'check', `Factor not met: ${where}. Add an apparatus or a tree.`);
  }
  const judged = checks.filter(({ ok, kind }) => ok === 'judge on site' && kind !== 'grab' && kind !== 'part');
  if (judged.length > 0) {
    const where = [...new Set(judged.map(({ at }) => at))].join(', ');
    say(
      'judge-anchor',
      'check',
      `Judge on site whether ${where} holds: the strength of a tree or rock is not computed.`,
    );
  }
  const paired = checks.filter(({ points }) => points === 2);
  if (paired.length > 0) {
    say(
      'two-points',
      'note',
      `Two attachment points share the force at ${[...new Set(paired.map(({ at }) => at))].join(', ')}.`,
    );
  }
}

/** Checks on the ground under the apparatus of the first layout. */
function standing(first: StudyLayout, { spots }: LayoutFacts, say: Say): void {
  const used = new Set([first.anchor, first.turn, first.lines.belay.anchor, first.lines.hand?.anchor]);
  const told = new Set<string>();
  for (const spot of spots.filter(({ id }) => used.has(id))) {
    for (const { code, severity, text } of spot.problems) {
      const line = `${spot.apparatus}: ${text}`;
      if (told.has(line)) continue;
      told.add(line);
      say(code === 'shoulder' ? 'shoulder-check' : `spot-${code}`, severity === 'unmet' ? 'stop' : 'check', line);
    }
  }
}
