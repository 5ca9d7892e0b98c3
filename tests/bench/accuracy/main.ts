import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { defaultAngleRule } from '../../../src/book/index.ts';
import { descentAngle, hillOf, sampleOfLine } from '../../../src/descent/index.ts';
import { localPlane } from '../../../src/geo/index.ts';
import { openElevation, readGround, readRoads } from '../../../src/io/index.ts';
import { fileSource } from '../../../src/io/node/index.ts';
import { benchAround, indexRoads, roadAt } from '../../../src/road/index.ts';
import { workUpSide } from '../../../src/study/index.ts';
import { type AngleCase, reportAngles } from './angles.ts';
import { type EdgeCase, edgeCase, reportEdges } from './edges.ts';
import { type KeyStation, keyStations, noSingleAnswer, readKey, stationWords } from './key.ts';
import { truthAlong } from './truth.ts';

/** Edge, angle and class of the demo's 1 m roads against the answer key: npm run bench:accuracy [-- --every N]. */
const { values } = parseArgs({
  options: { every: { type: 'string', default: '1' }, data: { type: 'string', default: 'data/demo' } },
});
const every = Number(values.every);
const folder = values.data;

/** Stations taken from one window of the road: the window is read around its middle, 150 m each way. */
const SPAN_M = 60;
const WINDOW_M = 560;

const key = readKey(join(folder, 'key.json'));
const roadsFile = join(folder, 'roads.geojson');
const roads = indexRoads(readRoads(readFileSync(roadsFile, 'utf8'), roadsFile));
const data = await openElevation(fileSource(join(folder, 'elevation-1m.tif')), {});
const truth = await openElevation(fileSource(join(folder, 'truth-05m.tif')), {});

const edges: EdgeCase[] = [];
const stated = { right: 1, doubled: 2, halved: 0.5 } as const;
const angles: Record<keyof typeof stated, AngleCase[]> = { right: [], doubled: [], halved: [] };
const untold: KeyStation[] = [];
let worked = 0;

for (const road of key.roads) {
  const sides = (['left', 'right'] as const).map((side) => keyStations(road, side));
  const last = Math.max(...sides[0].map((station) => station.drawnStationM));
  for (let middle = SPAN_M / 2; middle < last + SPAN_M / 2; middle += SPAN_M) {
    const here = sides.flat().filter((s) => Math.abs(s.drawnStationM - middle) <= SPAN_M / 2);
    const anchor = here.find((s) => s.edge)?.edge;
    if (!anchor) continue;
    await workSpan(here, anchor);
    if (process.stderr.isTTY) process.stderr.write(`\r${road.name} ${Math.round(middle)} m   `);
  }
}
await data.close();
await truth.close();

reportEdges(edges);
console.log(`Drop-side stations without edge or angle: ${untold.length} of ${worked}${stationWords(untold)}`);
const sigma = data.info.verticalRmseM!;
for (const name of ['right', 'doubled', 'halved'] as const) {
  reportAngles(`Error stated ${name} (${sigma * stated[name]} m)`, angles[name], defaultAngleRule);
}

async function workSpan(stations: KeyStation[], anchor: { lon: number; lat: number }): Promise<void> {
  const plane = localPlane(anchor);
  const ground = await readGround([data], plane, { x: 0, y: 0 }, WINDOW_M);
  const trueGround = await readGround([truth], plane, { x: 0, y: 0 }, WINDOW_M);
  const place = roadAt(roads, anchor);
  if (!place.ok) throw place.error;
  const found = benchAround(roads, place.value, ground, []);
  if (!found.ok) throw found.error;
  const bench = found.value;
  for (const station of stations) {
    const compared = edgeCase(bench, plane, station);
    if (!compared) continue;
    edges.push(compared);
    if (station.kind !== 'drop' || station.index % every !== 0) continue;
    const i = compared.at;
    const counts = station.lengthM !== null && !noSingleAnswer.has(station.place);
    if (counts) worked++;
    const work = workUpSide(
      { ground, roads, marks: [], patient: null, rule: defaultAngleRule },
      bench,
      place.value,
      i,
      station.side,
    );
    if (!work.descent?.angle) {
      if (counts) untold.push(station);
      continue;
    }
    const { line, steps, dropM } = work.descent;
    const real = truthAlong(trueGround, line);
    if (!real) continue;
    const hill = hillOf(ground, work.info);
    for (const name of ['right', 'doubled', 'halved'] as const) {
      const angle = descentAngle(sampleOfLine(hill, line), {
        cellM: hill.cellM,
        sigmaM: hill.sigmaM! * stated[name],
        screeningOnly: false,
        rule: defaultAngleRule,
        step: steps.length > 0,
      });
      if (!angle) continue;
      angles[name].push({
        station,
        truthDeg: real.governingDeg,
        truthStep: real.hasStep,
        truthDropM: real.dropM,
        governingDeg: angle.governingDeg,
        rangeDeg: angle.rangeDeg,
        class: angle.class,
        planAs: angle.planAs,
        probability: angle.probability,
        dropM,
        lengthM: line.lengthM,
      });
    }
  }
}
