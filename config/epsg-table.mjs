// Makes src/geo/crs/epsg-table.json, the coordinate reference systems that the program knows without a network, from two
// development libraries (epsg-index 2.0.0, which is made from the EPSG data set; proj4-list 1.0.4), choosing between them
// by config/epsg-shifts.json:
//   node config/epsg-table.mjs
// A test makes it again and compares. Rows are texts, parted by '|':
//   horizontal  code|name|projection, without its standing parts|accuracy of its shift to WGS 84, m|why it is refused
//   vertical    code|name|unit (m, ft, us-ft, or another unit's name)|up or down
//   compound    code|name|horizontal code|vertical code
// An empty field is unknown or does not apply.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import proj4 from 'proj4';
import { candidates, isHorizontal } from './epsg-candidates.mjs';

const require = createRequire(import.meta.url);

/** Where the table lies. */
export const path = fileURLToPath(new URL('../src/geo/crs/epsg-table.json', import.meta.url));

/** A shift by seven numbers in place of a grid file is no better than this, metres (EPSG transformations 1314, 1777, 1564: 2 to 4). */
const STAND_IN_M = 2;
const LONGLAT = '+proj=longlat +datum=WGS84 +no_defs';

/** The text of the table, as it lies in the file. */
export function make() {
  const index = require('epsg-index/all.json');
  const list = require('proj4-list');
  const checked = new Map(
    JSON.parse(readFileSync(new URL('./epsg-shifts.json', import.meta.url), 'utf8')).map((row) => {
      const [code, source, offM] = row.split('|');
      return [code, { source, offM: Number(offM ?? Number.NaN) }];
    }),
  );
  const rows = { horizontal: [], vertical: [], compound: [] };
  for (const entry of Object.values(index)) {
    if (isHorizontal(entry)) rows.horizontal.push(horizontal(entry, list, checked.get(entry.code)));
    else if (entry.kind === 'CRS-VERTCRS') rows.vertical.push(vertical(entry));
    else if (entry.kind === 'CRS-COMPOUNDCRS') rows.compound.push(compound(entry));
  }
  for (const kind of Object.keys(rows)) {
    rows[kind] = rows[kind].filter(Boolean).sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10));
  }
  return `${JSON.stringify(rows, null, 2)}\n`;
}

function horizontal(entry, list, checked) {
  const row = (...fields) => [entry.code, entry.name.replaceAll('|', '/'), ...fields].join('|').replace(/\|+$/, '');
  const refuse = (why) => row('', '', why);
  if (entry.unit === 'grad') return refuse('grads');
  const offers = candidates(entry, list);
  if (Object.keys(offers).length === 0) {
    return refuse(/\+nadgrids=(?!@null)/.test(entry.proj4 ?? '') ? 'grid' : entry.proj4 ? 'shift' : 'projection');
  }
  if (/\+axis=(?!enu)/.test(entry.proj4 ?? '')) return refuse('axes');
  if (!Object.values(offers).some((definition) => roundTrips(definition, entry.bbox))) return refuse('projection');
  if (!checked || checked.source === 'refuse') return refuse('shift');
  const definition = offers[checked.source];
  return row(definition, accuracy(entry, checked, definition));
}

/** Accuracy of a shift as the data set states it, never under what was measured, and nothing where nothing is shifted. */
function accuracy({ accuracy: stated, proj4: own }, { offM }, definition) {
  if (/\+datum=WGS84|\+nadgrids=@null/.test(definition)) return '';
  const least = /\+nadgrids=/.test(own ?? '') ? Math.max(offM, STAND_IN_M) : offM;
  if (stated === null || stated === undefined) return least > 1 ? least : '';
  return Math.max(stated, least);
}

/** True where the projection library reads the definition and its inverse undoes it at the middle of its area. */
function roundTrips(definition, bbox) {
  try {
    const [lon, lat] = middle(bbox);
    const projection = proj4(LONGLAT, definition);
    const [lonBack, latBack] = projection.inverse(projection.forward([lon, lat]));
    return Math.abs(latBack - lat) < 1e-7 && Math.abs(Math.sin(((lonBack - lon) * Math.PI) / 360)) < 1e-9;
  } catch {
    return false;
  }
}

/** The middle of an area. */
function middle(bbox) {
  const [north, west, south, east] = bbox;
  const lon = west <= east ? (west + east) / 2 : (west + east + 360) / 2;
  return [lon > 180 ? lon - 360 : lon, (north + south) / 2];
}

function vertical({ code, name, unit, wkt }) {
  const words = { metre: 'm', foot: 'ft', 'US survey foot': 'us-ft' };
  return [code, name.replaceAll('|', '/'), words[unit] ?? unit, /DOWN/.test(wkt ?? '') ? 'down' : 'up'].join('|');
}

function compound({ code, name, wkt }) {
  const at = (wkt ?? '').indexOf('VERT_CS[');
  if (at < 0) return null;
  const last = (text) => /AUTHORITY\["EPSG","(\d+)"\]\],?$/.exec(text)?.[1];
  const flat = last(wkt.slice(0, at));
  const high = last(wkt.slice(at).replace(/,AUTHORITY\["EPSG","\d+"\]\]$/, ''));
  return flat && high ? [code, name.replaceAll('|', '/'), flat, high].join('|') : null;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(path, make());
