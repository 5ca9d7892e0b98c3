import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { writeGeoTiff } from '../src/io/node/index.ts';
import type { Grid } from '../src/terrain/index.ts';
import { drawWays } from './book/drawn.ts';
import { writeRoads } from './book/roads-file.ts';
import { writeBook } from './book/write-book.ts';
import { spoil, spoilCoarse } from './error/artefacts.ts';
import { blur } from './fields/blur.ts';
import { emptyGrid } from './fields/raster.ts';
import { buildGround, meanCells } from './ground/build.ts';
import { coarseCells, fineRaster } from './ground/rasters.ts';
import { makeKey, writeKey } from './key/write-key.ts';
import { creekLine, creekPlace } from './land/creek.ts';
import { makeLand } from './land/land.ts';
import { makeNatural } from './land/natural.ts';
import { EPSG } from './position.ts';
import { area, coarseNoiseM, collectedOn, noise } from './recipe.ts';
import { designRoads } from './road/design.ts';
import { planRoads } from './road/plan.ts';

/** Makes the whole demo district in a folder that exists: node config/run.mjs seeds/make.ts FOLDER */
async function make(folder: string): Promise<void> {
  const step = progress();
  const creek = creekLine();
  const land = makeLand(creek);
  step('land');
  const roads = designRoads(planRoads(land.fine), land.fine, creek);
  step('roads');
  const natural = makeNatural(land.fine, creek);
  const ground = buildGround(natural, roads, creek);
  step('ground');
  const truth = emptyGrid(area, 1);
  meanCells(ground, truth);
  const data = { ...truth, data: truth.data.slice() };
  spoil(data, ground, roads);
  const coarse = coarseCells(land.wide, data);
  spoilCoarse(coarse);
  step('error');
  const smooth = { ...truth, data: truth.data.slice() };
  blur(smooth.data, smooth.width, smooth.height, 1, 1);
  const ways = drawWays(roads);
  const key = makeKey({ ground, smooth, roads, creekAt: creekPlace(creek) }, ways);
  await writeKey(folder, key);
  step('answer key');
  await writeRoads(folder, { ways, roads, creek, key });
  await writeBook(folder, key);
  step('book');
  const from = { ...about, verticalEpsg: 3855, dateTime: `${collectedOn.replaceAll('-', ':')} 12:00:00` };
  const surveyed = { ...common, VERTICAL_RMSE_M: String(noise.sigmaM), COLLECTED_ON: collectedOn };
  await writeGeoTiff(`${folder}/elevation-1m.tif`, data, { ...from, metadata: surveyed });
  step('elevation-1m.tif');
  await writeGeoTiff(`${folder}/elevation-10m.tif`, coarse, {
    ...from,
    metadata: { ...common, VERTICAL_RMSE_M: String(coarseNoiseM), COLLECTED_ON: '2012-01-01' },
  });
  await writeGeoTiff(`${folder}/truth-1m.tif`, truth, {
    ...about,
    metadata: { ...common, CONTENT: 'noise-free ground' },
  });
  step('truth-1m.tif');
  await writeGeoTiff(`${folder}/truth-05m.tif`, fineRaster(ground), {
    ...about,
    level: 2,
    smallestOverview: Number.POSITIVE_INFINITY,
    metadata: { ...common, CONTENT: 'noise-free ground near the roads, point heights at cell centres' },
  });
  step('truth-05m.tif');
  const hashes = { 'elevation-1m.tif': hash(data), 'elevation-10m.tif': hash(coarse), 'truth-1m.tif': hash(truth) };
  await writeFile(
    `${folder}/samples.sha256`,
    Object.entries(hashes)
      .map(([name, sum]) => `${sum}  ${name}\n`)
      .join(''),
  );
}

const about = { epsg: EPSG, noData: -9999 };
const common = {
  TERRAIN_KIND: 'bare earth',
  AREA_OR_POINT: 'Area',
  INVENTED: 'Tamarrow Fire District, a made-up place',
};

/** SHA-256 of a raster's samples as whole millimetres, 32-bit little endian, no-data as the least integer. */
function hash(grid: Grid): string {
  const millimetres = Int32Array.from(grid.data, (z) => (Number.isNaN(z) ? -2147483648 : Math.round(z * 1000)));
  return createHash('sha256').update(new Uint8Array(millimetres.buffer)).digest('hex');
}

function progress(): (what: string) => void {
  const start = performance.now();
  return (what) =>
    process.stderr.write(`  ${((performance.now() - start) / 1000).toFixed(1).padStart(5)} s  ${what}\n`);
}

await make(process.argv[2] ?? '.');
