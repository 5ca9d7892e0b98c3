import { existsSync, readFileSync } from 'node:fs';
import { defaultAngleRule } from '../../src/book/index.ts';
import { localPlane } from '../../src/geo/index.ts';
import { openElevation, readGround, readRoads } from '../../src/io/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import { benchAround, indexRoads, roadAt } from '../../src/road/index.ts';
import {
  completeStudy,
  defaultCircumstances,
  runStudy,
  type StudyInputs,
  standUp,
  workUpGround,
} from '../../src/study/index.ts';

const RUNS = 15;
const FOLDER = 'data/demo';
/** Descents to be timed: the site of the demo whose descent is nearest to this length, metres. */
const LENGTHS = [30, 60, 150];

/**
 * One study of a site, warm, its window already decoded: the whole of it, the cross-sections alone, where apparatus can stand,
 * layouts and words on ground kept, and the same with a spot pinned that was another one before.
 */
export async function benchStudy(print: (line: string) => void): Promise<void> {
  if (!existsSync(`${FOLDER}/elevation-1m.tif`)) {
    print('No demo district: run npm run demo first; studies not timed.');
    return;
  }
  const roads = indexRoads(readRoads(readFileSync(`${FOLDER}/roads.geojson`, 'utf8'), 'roads.geojson'));
  const source = await openElevation(fileSource(`${FOLDER}/elevation-1m.tif`), {});
  const places = await longDescents(source, roads);
  print(`One study, warm, window decoded; milliseconds, least, median and most of ${RUNS}`);
  for (const { inputs, lengthM } of places) {
    const place = roadAt(roads, inputs.at);
    if (!place.ok) continue;
    const whole = time(() => runStudy(inputs));
    const sections = time(() => benchAround(roads, place.value, inputs.ground, []));
    const of = (part: readonly number[]): string => `= ${(part[1]! / whole[1]).toFixed(2)} of it`;
    print(`descent of ${lengthM.toFixed(0).padStart(3)} m   study ${text(whole)}`);
    print(`   300 sections              ${text(sections)} ${of(sections)}`);
    const work = workUpGround(inputs);
    if (!work.ok) continue;
    const alone = time(() => workUpGround(inputs));
    print(`   the ground alone          ${text(alone)} ${of(alone)}`);
    const ground = standUp(work.value, inputs);
    if (!ground.standing) continue;
    const stand = time(() => standUp({ ...ground, standing: null }, inputs).standing !== null);
    print(`   where apparatus can stand ${text(stand)} ${of(stand)}`);
    const rest = time(() => completeStudy(ground, inputs).layouts.length > 0);
    print(`   layouts, ways, words      ${text(rest)} ${of(rest)}`);
    const anchors = ground.standing!.spots.filter(({ use }) => use === 'anchor').map(({ id }) => id);
    let next = 0;
    const moved = time(() => {
      const anchor = anchors[next++ % anchors.length]!;
      return completeStudy(ground, { ...inputs, pins: { anchor } }).spots.length > 0;
    });
    print(`   the same, a spot moved    ${text(moved)} ${of(moved)}`);
  }
  await source.close();
}

type Source = Awaited<ReturnType<typeof openElevation>>;

/** Places of the answer key whose descent comes nearest to the lengths asked for. */
async function longDescents(source: Source, roads: StudyInputs['roads']) {
  const key = JSON.parse(readFileSync(`${FOLDER}/key.json`, 'utf8')) as {
    roads: { columns: Record<string, (number | string | null)[]> }[];
  };
  const found: { inputs: StudyInputs; lengthM: number }[] = [];
  for (const wanted of LENGTHS) {
    let best = { gap: Number.POSITIVE_INFINITY, lon: 0, lat: 0 };
    for (const { columns } of key.roads) {
      columns['right.lengthM'].forEach((length, i) => {
        const gap = Math.abs(Number(length) - wanted);
        if (length === null || columns['right.place'][i] !== 'easy' || gap >= best.gap) return;
        best = { gap, lon: Number(columns['right.edgeLon'][i]), lat: Number(columns['right.edgeLat'][i]) };
      });
    }
    const at = { lon: best.lon, lat: best.lat };
    const ground = await readGround([source], localPlane(at), { x: 0, y: 0 }, 320);
    const inputs: StudyInputs = {
      ground,
      roads,
      marks: [],
      at,
      side: 'right',
      patient: null,
      rule: defaultAngleRule,
      ...defaultCircumstances,
      units: 'us',
    };
    const study = runStudy(inputs);
    if (study.ok && study.value.descent) found.push({ inputs, lengthM: study.value.descent.horizontalM });
  }
  return found;
}

/** Least, median and most of the runs after a warm-up, milliseconds. */
function time(work: () => { ok: boolean } | boolean): [number, number, number] {
  const times: number[] = [];
  for (let run = -4; run < RUNS; run++) {
    const start = performance.now();
    const done = work();
    if (done === false || (typeof done === 'object' && !done.ok)) throw new Error('The timed work was refused.');
    if (run >= 0) times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return [times[0], times[RUNS >> 1], times[RUNS - 1]];
}

const text = ([least, median, most]: [number, number, number]): string =>
  `${least.toFixed(1)} ${median.toFixed(1)} ${most.toFixed(1)}`;
