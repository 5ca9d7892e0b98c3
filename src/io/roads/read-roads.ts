import type { RoadNetwork } from '../../road/index.ts';
import { UserError } from '../../units/index.ts';
import { geoJsonItems } from './geojson-items.ts';
import { toNetwork } from './network-from-items.ts';
import { overpassItems } from './overpass-items.ts';

const expected = 'GeoJSON lines or Overpass JSON';

/**
 * Roads and what is mapped beside them, from the text of a GeoJSON file (WGS 84 longitude, latitude, OpenStreetMap tags as
 * properties where there are any) or of an Overpass JSON answer (`out geom`, or `out body` with its nodes). `name` is the
 * file as the user gave it. Throws `UserError` with one sentence where there is no road to be had from it.
 */
export function readRoads(text: string, name: string): RoadNetwork {
  const json = parse(text, name);
  const network = toNetwork(isOverpass(json) ? overpassItems(json, name) : geoJsonItems(json, name));
  if (network.ways.length === 0) {
    throw new UserError(
      'roads-none',
      `${name} holds no road; expected ${expected} with at least one line tagged highway, or untagged lines alone.`,
    );
  }
  return network;
}

function parse(text: string, name: string): object {
  const start = text.replace(/^\uFEFF/, '').trimStart();
  if (start === '') throw new UserError('roads-empty', `${name} is empty; expected ${expected}.`);
  if (start.startsWith('<')) {
    throw new UserError('roads-xml', `${name} is XML; export the roads as ${expected}.`);
  }
  let json: unknown;
  try {
    json = JSON.parse(start);
  } catch (cause) {
    throw new UserError('roads-json', `${name} is not readable JSON, perhaps cut short; expected ${expected}.`, {
      cause,
    });
  }
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    throw new UserError('roads-shape', `${name} is JSON but holds no features; expected ${expected}.`);
  }
  return json;
}

const isOverpass = (json: object): json is { elements: unknown[]; remark?: unknown } =>
  'elements' in json && Array.isArray(json.elements);
