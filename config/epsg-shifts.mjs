// Makes config/epsg-shifts.json: which of the two development libraries knows the projection and datum shift of each
// coordinate reference system right, found by comparing them with PROJ. Both have rows that are hundreds of metres off
// (signs of a turn taken the other way round), so neither is believed without this.
//   node config/epsg-shifts.mjs          (needs gdaltransform; takes about ten minutes)
// At five positions within each system's area both libraries' definitions are compared with PROJ's answer; the nearer one
// is named, with its largest difference in metres, rounded up. "refuse" stands where none comes within 5 m, which is half
// the width of a road bench. Rows: code|a name of config/epsg-candidates.mjs, or refuse|difference, m.
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import proj4 from 'proj4';
import { candidates, isHorizontal } from './epsg-candidates.mjs';

const LARGEST_M = 5;
const LONGLAT = '+proj=longlat +datum=WGS84 +no_defs';
const METRES_PER_DEGREE = 111_320;

const require = createRequire(import.meta.url);
const index = require('epsg-index/all.json');
const list = require('proj4-list');

const rows = [];
for (const entry of Object.values(index)) {
  if (!isHorizontal(entry) || !entry.bbox) continue;
  const offers = Object.entries(candidates(entry, list));
  if (offers.length === 0) continue;
  const at = positions(entry.bbox);
  const right = byProj(entry.code, at);
  let best = ['refuse', Number.POSITIVE_INFINITY];
  for (const [name, definition] of offers) {
    const off = largestDifference(definition, at, right);
    // Half a metre is no reason to leave the first, which also states its accuracy.
    if (off < best[1] - 0.5) best = [name, off];
  }
  const tenths = Math.ceil(best[1] * 10) / 10;
  rows.push(`${entry.code}|${tenths <= LARGEST_M ? `${best[0]}|${tenths}` : 'refuse'}`);
}
writeFileSync(fileURLToPath(new URL('./epsg-shifts.json', import.meta.url)), `${JSON.stringify(rows, null, 2)}\n`);

/** The middle of an area and four positions a fifth of its size away. */
function positions([north, west, south, east]) {
  const wide = west <= east ? east - west : east - west + 360;
  const [lon, lat] = [west + wide / 2, (north + south) / 2];
  return [
    [0, 0],
    [0.2, 0.2],
    [0.2, -0.2],
    [-0.2, 0.2],
    [-0.2, -0.2],
  ].map(([u, v]) => {
    const x = lon + u * wide;
    return [x > 180 ? x - 360 : x, lat + v * (north - south)];
  });
}

function byProj(code, at) {
  const run = spawnSync('gdaltransform', ['-s_srs', 'EPSG:4326', '-t_srs', `EPSG:${code}`, '-output_xy'], {
    input: at.map(([lon, lat]) => `${lon} ${lat}\n`).join(''),
    encoding: 'utf8',
  });
  return run.stdout
    .trim()
    .split('\n')
    .map((line) => line.split(/\s+/).map(Number));
}

/** Largest distance in metres, NaN where the definition cannot be used. */
function largestDifference(definition, at, right) {
  try {
    const projection = proj4(LONGLAT, definition);
    const degrees = /\+proj=longlat/.test(definition);
    return Math.max(
      ...at.map((position, i) => {
        const [x, y] = projection.forward(position);
        const [dx, dy] = [x - right[i][0], y - right[i][1]];
        if (!degrees) return Math.hypot(dx, dy) * unitOf(definition);
        const turn = ((dx + 540) % 360) - 180;
        return Math.hypot(turn * Math.cos((position[1] * Math.PI) / 180), dy) * METRES_PER_DEGREE;
      }),
    );
  } catch {
    return Number.NaN;
  }
}

/** Metres in a definition's unit; the difference is only judged to a tenth. */
function unitOf(definition) {
  const factor = Number(/\+to_meter=(\S+)/.exec(definition)?.[1] ?? Number.NaN);
  const named = { ft: 0.3048, 'us-ft': 1200 / 3937 }[/\+units=(\S+)/.exec(definition)?.[1]];
  return factor || named || 1;
}
