import { writeFile } from 'node:fs/promises';
import type { KeyRoad } from '../key/write-key.ts';
import { lonLat } from '../position.ts';
import { area, features } from '../recipe.ts';
import type { Line } from '../road/line.ts';
import type { RoadDesign } from '../road/road-design.ts';
import type { DrawnWay } from './drawn.ts';

interface Mapped {
  readonly ways: readonly DrawnWay[];
  readonly roads: readonly RoadDesign[];
  readonly creek: Line;
  readonly key: readonly KeyRoad[];
}

type Positions = [number, number][];

/** Writes roads.geojson: the ways as drawn, and the creek, power line, barriers and trail beside them, with OpenStreetMap tags. */
export async function writeRoads(folder: string, mapped: Mapped): Promise<void> {
  const list = [...mapped.ways.map((way) => line(`way/${way.id}`, way.tags, pointsOf(way.line))), ...others(mapped)];
  const text = list.map((feature) => JSON.stringify(feature)).join(',\n');
  await writeFile(`${folder}/roads.geojson`, `{"type":"FeatureCollection","features":[\n${text}\n]}\n`);
}

function others({ roads, creek, key }: Mapped) {
  const inside = Array.from({ length: creek.x.length }, (_, i) => i).filter(
    (i) => creek.x[i] > area.west && creek.x[i] < area.east && i % 3 === 0,
  );
  const stream = inside.map((i) => lonLat(creek.x[i], creek.y[i]));
  const out = [line('way/2001', { waterway: 'stream', name: 'Lantern Creek' }, stream)];
  let id = 2010;
  for (const f of features) {
    const tags = barrierTags[f.what];
    if (tags)
      out.push(
        line(`way/${id++}`, tags, alongEdge(key, f.road, f.from, f.to, f.side, f.what === 'guardrail' ? -0.45 : 0)),
      );
  }
  const poles: Positions = powerPoles.map(([x, y]) => lonLat(area.west + x, area.south + y));
  out.push(line('way/2101', { power: 'line', voltage: '69000' }, poles));
  const cinder = roads.find((road) => road.key === 'cinder' && !road.second)!;
  out.push(line('way/2201', { highway: 'path', name: 'Ditch Rider Path' }, beside(cinder, 1830, 2280, 34)));
  return [...out, ...poles.map((at, k) => point(`node/${3001 + k}`, { power: 'tower' }, at))];
}

const barrierTags: Partial<Record<string, Record<string, string>>> = {
  guardrail: { barrier: 'guard_rail' },
  'retaining wall': { barrier: 'retaining_wall', height: '3.2' },
};

const powerPoles: readonly (readonly [number, number])[] = [
  [120, 2350],
  [480, 2130],
  [860, 1905],
  [1190, 1700],
  [1460, 1420],
  [1700, 1130],
  [1990, 840],
  [2290, 540],
];

/** Positions along a true edge, `outwardM` past it. */
function alongEdge(
  key: readonly KeyRoad[],
  road: string,
  from: number,
  to: number,
  side: string,
  outwardM: number,
): Positions {
  const { columns } = key.find((k) => k.key === road)!;
  const out: Positions = [];
  for (let i = from; i <= to; i += 6) {
    const [ex, ey] = [columns[`${side}.edgeX`][i], columns[`${side}.edgeY`][i]] as [number | null, number | null];
    if (ex === null || ey === null) continue;
    const mx = columns.x[i] as number;
    const my = columns.y[i] as number;
    const length = Math.hypot(ex - mx, ey - my);
    out.push(lonLat(ex + ((ex - mx) / length) * outwardM, ey + ((ey - my) / length) * outwardM));
  }
  return out;
}

/** Positions `away` metres to the right of a road. */
function beside(road: RoadDesign, from: number, to: number, away: number): Positions {
  const out: Positions = [];
  for (let i = from; i <= to; i += 10) {
    const sway = away + 3 * Math.sin(i / 23);
    out.push(lonLat(road.line.x[i] + road.ty[i] * sway, road.line.y[i] - road.tx[i] * sway));
  }
  return out;
}

const pointsOf = (l: Line): Positions => Array.from(l.x, (x, i) => lonLat(x, l.y[i]));

const line = (id: string, properties: Readonly<Record<string, string>>, coordinates: Positions) => ({
  type: 'Feature' as const,
  id,
  properties,
  geometry: { type: 'LineString' as const, coordinates },
});

const point = (id: string, properties: Readonly<Record<string, string>>, coordinates: [number, number]) => ({
  type: 'Feature' as const,
  id,
  properties,
  geometry: { type: 'Point' as const, coordinates },
});
