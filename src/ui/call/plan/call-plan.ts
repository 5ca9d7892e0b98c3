import type { CallSite } from '../../../io/offline/index.ts';
import { noHaulReasons, type Study, type StudyLayout, type StudySpot } from '../../../study/index.ts';
import {
  azimuthOf,
  compassWord,
  formatAngleRange,
  formatDegrees,
  formatLength,
  formatLengthFigure,
  type UnitSystem,
} from '../../../units/index.ts';
import { type HoldWords, holdOf } from './hold.ts';
import { type NextWords, nextOf } from './next.ts';
import { peopleWords } from './people.ts';

/** One line of the plan. `strong` is what the eye must find, `more` a quieter second line. */
export interface PlanRow {
  readonly label: string;
  readonly text: string;
  readonly strong: string | null;
  readonly more: string | null;
  /** Length of the pulls of a raise, as shares of its whole; null where there is none. */
  readonly pulls: number | null;
}

/** A study in the words of the call screen, short enough to read at a glance. */
export interface CallPlan {
  readonly planAs: 'low' | 'steep' | 'high' | null;
  readonly undecided: boolean;
  /** Somebody measured the angle there, and that counts. */
  readonly measured: boolean;
  readonly angle: string | null;
  readonly range: string | null;
  /** Sentences that stop: shown before anything else. */
  readonly stops: readonly string[];
  readonly rows: readonly PlanRow[];
  readonly hold: HoldWords;
  readonly next: NextWords | null;
  readonly data: string;
}

/** What the book says of a site beside its study. */
type SiteFacts = Pick<CallSite, 'stops' | 'checkedOn'>;
const noFacts: SiteFacts = { stops: [], checkedOn: null };

/** More resets than this are not practical, as the sentence of a study has it. */
const MOST_RESETS = 10;

/** Puts a study into words. Planned as high, or without an angle: no haul, no people, no minutes. */
export function callPlan(study: Study, units: UnitSystem, site: SiteFacts = noFacts): CallPlan {
  const { angle, warnings, layouts } = study;
  const planAs = angle?.planAs ?? null;
  const told = planAs !== 'high' && planAs !== null && layouts.length > 0;
  const rows = [
    ...(told ? [spotRow(study, layouts[0]!, units)] : []),
    ...ropeRows(study, units, told),
    ...(told ? hauls(study, units) : []),
    ...(told ? [peopleRow(study)] : []),
    ...(planAs !== 'high' && !told ? noHaulRows(study) : []),
  ];
  return {
    planAs,
    undecided: angle?.class === 'undecided',
    measured: study.origins['angle.governingDeg']?.how === 'measured',
    angle: angle ? formatDegrees(angle.governingDeg) : null,
    range: angle ? formatAngleRange(...angle.rangeDeg) : null,
    stops: [
      ...new Set([...site.stops, ...warnings.filter(({ severity }) => severity === 'stop').map(({ text }) => text)]),
    ],
    rows,
    hold: holdOf(study),
    next: nextOf(study),
    data: dataWords(study, units, site.checkedOn),
  };
}

const row = (label: string, text: string, more: Partial<PlanRow> = {}): PlanRow => ({
  label,
  text,
  strong: null,
  more: null,
  pulls: null,
  ...more,
});

/** Where the first apparatus stands, against the descent. */
function spotRow(study: Study, layout: StudyLayout, units: UnitSystem): PlanRow {
  const ids = [...new Set([layout.turn, layout.anchor].filter((id) => id !== null))];
  const words = ids.slice(0, 1).map((id) => {
    const role = id === layout.turn ? 'at the turn' : 'as anchor';
    const spot = study.spots.find((one) => one.id === id);
    if (spot) return `${spot.apparatus} ${role}, ${standWords(study, spot, units)}`;
    const mark = study.marks.find((one) => one.id === id);
    return `${mark?.name ?? `${mark?.kind ?? 'anchor'} ${id}`} ${role}`;
  });
  return row('Spot', words[0]!);
}

/** "nose east, 8 ft west of the descent". */
function standWords(study: Study, spot: StudySpot, units: UnitSystem): string {
  const { edge, site } = study;
  const nose = `nose ${compassWord(spot.headingDeg)}`;
  if (!edge) return nose;
  const awayM = Math.abs(spot.stationM - site.road.stationM);
  if (awayM < 1) return `${nose}, on the descent line`;
  const degree = Math.cos((edge.lat * Math.PI) / 180);
  const toward = compassWord(azimuthOf((spot.lon - edge.lon) * degree, spot.lat - edge.lat));
  return `${nose}, ${formatLength(awayM, units)} ${toward} of the descent`;
}

/** Rope needed against rope there, or the length of the slope where no layout is told. */
function ropeRows(study: Study, units: UnitSystem, told: boolean): PlanRow[] {
  const { descent, layouts, arriving } = study;
  if (!descent) return [];
  const slope = `${formatLength(descent.ropeLineM, units, 'up')} to ${endWords[descent.end.why]}`;
  const drop = `drop ${formatLength(descent.dropM, units)}`;
  if (!told) return [row('Rope', slope, { more: drop })];
  const { ropeM, fits } = layouts[0]!;
  const need = `${formatLength(ropeM.main, units, 'up')} of main`;
  const tier = fits.firstArriving === 'yes' ? 'first arriving' : fits.firstAlarm === 'yes' ? 'first alarm' : null;
  const ropes = arriving.filter((one) => tier === null || one.tier === tier || one.tier === 'first arriving');
  const longest = ropes.flatMap(({ ropesM }) => ropesM).reduce((most, one) => Math.max(most, one), 0);
  const there = `${formatLengthFigure(longest, units, 'down')} there`;
  const [short] = fits.short;
  if (fits.firstAlarm === 'yes' || !short) return [row('Rope', `${need}, ${there}`)];
  const mend = short.unit === null ? 'nobody listed brings it' : `${short.unit}, ${short.atMin} min`;
  const strong = `${short.line} ${formatLength(short.byM, units, 'up')} short`;
  return [row('Rope', need, { strong, more: mend })];
}

/** The best turned and the best straight haul, the leading one first. */
function hauls(study: Study, units: UnitSystem): PlanRow[] {
  const [first] = study.layouts;
  const kinds = first!.kind === 'turned' ? (['turned', 'straight'] as const) : (['straight', 'turned'] as const);
  return [...wayRows(study), ...kinds.map((kind) => haulRow(study, kind, kind === first!.kind, units))];
}

function haulRow(study: Study, kind: 'turned' | 'straight', leads: boolean, units: UnitSystem): PlanRow {
  const label = kind === 'turned' ? 'Turned' : 'Straight';
  const layout = study.layouts.find((one) => one.kind === kind);
  if (!layout) {
    return row(label, 'no place for it', { strong: 'none' });
  }
  const field = formatLength(layout.haulFieldM, units, 'down');
  const where = kind === 'turned' ? `${alongWord(layout)} ` : '';
  const text = `${where}${field}, ${layout.mechanicalAdvantage}`;
  if (layout.resets > MOST_RESETS) return row(label, text, { strong: 'not practical' });
  const strong = `${layout.resets === 0 ? 'no' : layout.resets} reset${layout.resets === 1 ? '' : 's'}`;
  return row(label, text, { strong, pulls: leads ? layout.pulls : null });
}

/** Compass word of the haul along the road, from the turn to the anchor. */
function alongWord({ points: { turn, edge, anchor } }: StudyLayout): string {
  const from = turn ?? edge;
  const degree = Math.cos((from.lat * Math.PI) / 180);
  return compassWord(azimuthOf((anchor.lon - from.lon) * degree, anchor.lat - from.lat));
}

/** The way that leads where it is no raise. */
function wayRows({ ways }: Study): PlanRow[] {
  const [way] = ways;
  if (!way?.allowed || way.kind === 'raise' || way.reachedBy !== 'vehicle') return [];
  const people = `${way.people.count} people${way.people.atMin ? `, ${way.people.atMin} min` : ''}`;
  if (way.kind === 'carry') {
    return [row('Carry', `${way.bearers === 4 ? 'four' : 'six'} carry, one line`, { strong: 'first', more: people })];
  }
  return [row('Lower', `to ${way.meets}, no haul`, { strong: 'first', more: people })];
}

function peopleRow(study: Study): PlanRow {
  const { text, strong, more } = peopleWords(study);
  return row('People', text, { strong, more });
}

/** Why there is no haul where there should be one. */
function noHaulRows({ warnings, terrain, angle, sentence }: Study): PlanRow[] {
  if (!angle) return [row('Ground', sentence)];
  if (terrain.screeningOnly) return [row('Haul', 'Screening only: no spots, no layouts from these data.')];
  return noHaulReasons(warnings).map((text) => row('Haul', text));
}

/** Elevation's source, cell, accuracy and day, and the last field check. */
function dataWords({ terrain, check }: Study, units: UnitSystem, checkedOn: string | null): string {
  const { source, cellM, verticalRmseM, collectedOn } = terrain;
  const rmse = verticalRmseM === null ? 'accuracy unknown' : `RMSE ${accuracy(verticalRmseM, units)}`;
  const parts = [source, `${formatLength(cellM, units)} cells`, rmse, collectedOn ?? 'date unknown'];
  const inBook = checkedOn === null ? 'not field-verified' : `checked in the field ${checkedOn}`;
  return `${parts.join(', ')}; ${check ? `checked ${check.on} by ${check.by} (${check.method})` : inBook}.`;
}

const INCHES_PER_METRE = 1 / 0.0254;
const accuracy = (rmseM: number, units: UnitSystem): string =>
  units === 'us' ? `${Math.ceil(rmseM * INCHES_PER_METRE)} in` : `${Math.ceil(rmseM * 100)} cm`;

const endWords = {
  'patient point': 'the patient point',
  'ground levels': 'level ground',
  water: 'the water',
  road: 'the road below',
  limit: 'the limit of this study, slope goes on',
  'fall line bends': 'where the fall line bends, slope goes on',
  'no data': 'where the data end',
} as const;
