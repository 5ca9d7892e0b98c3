import type { Tags } from '../../road/index.ts';
import { UserError } from '../../units/index.ts';
import type { MapItem } from './map-item.ts';

interface LatLon {
  readonly lat: number;
  readonly lon: number;
}

interface Element {
  readonly type?: unknown;
  readonly id?: unknown;
  readonly tags?: Tags;
  readonly lat?: number;
  readonly lon?: number;
  readonly nodes?: readonly number[];
  readonly geometry?: readonly (LatLon | null)[];
  readonly members?: readonly { type: string; ref: number; role: string; geometry?: readonly (LatLon | null)[] }[];
}

/**
 * Lines, areas and points of an Overpass answer. `out geom` carries positions in the way, with null where a box cut it;
 * `out body` carries node ids whose nodes stand in the same answer. A line is parted wherever a position is missing.
 * Throws `UserError` where the answer is an error or its ways have no positions at all.
 */
export function overpassItems(json: { elements: unknown[]; remark?: unknown }, name: string): MapItem[] {
  const elements = json.elements.filter((e): e is Element => typeof e === 'object' && e !== null);
  if (elements.length === 0) throw noElements(json.remark, name);
  const nodes = new Map<unknown, LatLon>();
  const ways = new Map<unknown, Element>();
  for (const e of elements) {
    if (e.type === 'node' && isPosition(e)) nodes.set(e.id, e);
    if (e.type === 'way') ways.set(e.id, e);
  }
  const positions = (way: Element | undefined): readonly (LatLon | null)[] =>
    way?.geometry ?? way?.nodes?.map((id) => nodes.get(id) ?? null) ?? [];
  const items: MapItem[] = [];
  for (const e of elements) {
    if (e.type === 'node' && isPosition(e) && e.tags) items.push(pointItem(e));
    if (e.type === 'way') items.push(...lineItems(`way/${e.id}`, e.tags ?? {}, positions(e)));
    if (e.type === 'relation' && e.tags?.type === 'multipolygon') {
      for (const member of e.members ?? []) {
        if (member.type !== 'way' || member.role === 'inner') continue;
        const line = member.geometry ?? positions(ways.get(member.ref));
        items.push(...lineItems(`relation/${e.id}/${member.ref}`, e.tags, line));
      }
    }
  }
  if (ways.size > 0 && items.every(({ shape }) => shape === 'point')) {
    throw new UserError(
      'roads-no-positions',
      `${name} has ways without positions; ask for them with "out geom", or with "out body" followed by their nodes.`,
    );
  }
  return items;
}

function noElements(remark: unknown, name: string): UserError {
  return typeof remark === 'string'
    ? new UserError(
        'roads-remark',
        `${name} holds no road because the map server answered "${remark}"; ask for a smaller area.`,
      )
    : new UserError('roads-none', `${name} holds no road: the answer is empty; ask for an area with roads in it.`);
}

const isPosition = <T extends { lat?: number; lon?: number }>(p: T | null | undefined): p is T & LatLon =>
  p !== null && p !== undefined && Number.isFinite(p.lat) && Number.isFinite(p.lon);

const pointItem = (e: Element & LatLon): MapItem => ({
  id: `node/${e.id}`,
  tags: e.tags ?? {},
  shape: 'point',
  coordinates: Float64Array.of(e.lon, e.lat),
});

function lineItems(id: string, tags: Tags, positions: readonly (LatLon | null)[]): MapItem[] {
  const parts: number[][] = [[]];
  for (const p of positions) {
    const part = parts.at(-1)!;
    const n = part.length;
    if (!isPosition(p)) {
      if (n > 0) parts.push([]);
    } else if (n === 0 || part[n - 2] !== p.lon || part[n - 1] !== p.lat) part.push(p.lon, p.lat);
  }
  return parts
    .filter((part) => part.length >= 4)
    .map((part, k) => ({
      id: k === 0 ? id : `${id}#${k + 1}`,
      tags,
      shape: isArea(part, tags) ? 'area' : 'line',
      coordinates: Float64Array.from(part),
    }));
}

/** A closed way is an area only where its tags mean one: a loop road and a walled yard are lines. */
function isArea(part: readonly number[], tags: Tags): boolean {
  const n = part.length;
  if (n < 8 || part[0] !== part[n - 2] || part[1] !== part[n - 1]) return false;
  if (tags.area !== undefined) return tags.area === 'yes';
  return tags.natural === 'water' || tags.landuse !== undefined || tags.waterway === 'riverbank';
}
