import { writeFile } from 'node:fs/promises';
import { toDegrees } from '../../src/units/index.ts';
import { type DrawnWay, drawnRoute } from '../book/drawn.ts';
import { convergenceDeg, EPSG, gridScale, lonLat } from '../position.ts';
import { noise, seed } from '../recipe.ts';
import type { Line } from '../road/line.ts';
import { hardPlaces, leftOutPlaces, placesOf } from './place.ts';
import { type KeyPlace, type KeySide, keySide } from './rows.ts';

type Cell = string | number | null;
/** A road's key as columns: name to one value a station. */
export interface KeyRoad {
  readonly key: string;
  readonly name: string;
  readonly columns: Readonly<Record<string, readonly Cell[]>>;
}

const round = (value: number, digits: number): number => {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale;
};
const maybe = (value: number | null | undefined, digits: number): number | null =>
  value === null || value === undefined ? null : round(value, digits);

/** Works the answer key out for every metre of every road (first carriageways). */
export function makeKey(place: KeyPlace, ways: readonly DrawnWay[]): KeyRoad[] {
  return place.roads
    .filter(({ second }) => !second)
    .map((road) => {
      const route = drawnRoute(ways, road.key);
      const count = road.line.s.length;
      const stations = Array.from({ length: count }, (_, i) => i);
      const sides = ([0, 1] as const).map((side) => {
        const rows = stations.map((i) => keySide(place, road, side, i));
        return { rows, places: placesOf(road.key, side, rows) };
      });
      const drawn = stations.map((i) => onLine(route, road.line.x[i], road.line.y[i]));
      const columns: Record<string, Cell[]> = {
        stationM: stations.map((i) => round(i / gridScale, 3)),
        x: stations.map((i) => round(road.line.x[i], 3)),
        y: stations.map((i) => round(road.line.y[i], 3)),
        z: stations.map((i) => round(road.line.z[i], 3)),
        gradeDeg: stations.map((i) => round(grade(road.line, i), 3)),
        crossfallDeg: stations.map((i) => round(toDegrees(Math.atan(road.crossfall[i])), 3)),
        benchWidthM: stations.map((i) => width(sides[0].rows[i], sides[1].rows[i])),
        drawnStationM: drawn.map((d) => round(d.stationM / gridScale, 3)),
        lineOffsetM: drawn.map((d) => round(d.offsetM / gridScale, 3)),
      };
      sides.forEach(({ rows, places }, side) => {
        Object.assign(columns, sideColumns(side === 0 ? 'left' : 'right', rows, places, route));
      });
      return { key: road.key, name: road.name, columns };
    });
}

function sideColumns(
  name: string,
  rows: readonly KeySide[],
  places: readonly string[],
  route: Line,
): Record<string, Cell[]> {
  const column = (label: string, value: (row: KeySide, i: number) => Cell) =>
    [`${name}.${label}`, rows.map(value)] as const;
  return Object.fromEntries([
    column('kind', (r) => r.kind),
    column('place', (_, i) => places[i]),
    column('margin', (r) => round(Math.min(9, r.margin), 2)),
    column('slope', (r) => r.slopeKind),
    column('edgeM', (r) => maybe(r.edgeM, 3)),
    column('firmM', (r) => maybe(r.firmM, 3)),
    column('edgeX', (r) => maybe(r.edgeX, 3)),
    column('edgeY', (r) => maybe(r.edgeY, 3)),
    column('edgeZ', (r) => maybe(r.edgeZ, 3)),
    column('edgeLon', (r) => (r.edgeX === null || r.edgeY === null ? null : lonLat(r.edgeX, r.edgeY)[0])),
    column('edgeLat', (r) => (r.edgeX === null || r.edgeY === null ? null : lonLat(r.edgeX, r.edgeY)[1])),
    column('drawnOffsetM', (r) =>
      r.edgeX === null || r.edgeY === null ? null : round(onLine(route, r.edgeX, r.edgeY).offsetM / gridScale, 3),
    ),
    column('azimuthDeg', (r) => maybe(r.descent?.azimuthDeg, 2)),
    column('lengthM', (r) => maybe(r.descent?.lengthM, 2)),
    column('dropM', (r) => maybe(r.descent?.dropM, 3)),
    column('governingDeg', (r) => maybe(r.descent?.governingDeg, 3)),
    column('governingFromM', (r) => maybe(r.descent?.fromM, 2)),
    column('endX', (r) => maybe(r.descent?.endX, 3)),
    column('endY', (r) => maybe(r.descent?.endY, 3)),
    column('why', (r) => r.descent?.why ?? null),
    column('stepAtM', (r) => maybe(r.descent?.steps[0]?.distanceM, 2)),
    column('stepM', (r) => maybe(r.descent?.steps[0]?.heightM, 2)),
    column('crosses', (r) => r.descent?.crossings[0]?.road ?? null),
    column('crossesAtM', (r) => maybe(r.descent?.crossings[0]?.distanceM, 2)),
  ]);
}

const width = (left: KeySide, right: KeySide): number | null =>
  left.edgeM === null || right.edgeM === null ? null : round(left.edgeM + right.edgeM, 3);

function grade({ z }: Line, i: number): number {
  const a = Math.max(0, i - 5);
  const b = Math.min(z.length - 1, i + 5);
  return toDegrees(Math.atan(((z[b] - z[a]) / (b - a)) * gridScale));
}

/** Station and signed offset (positive right) of a point on a drawn line, grid metres. */
function onLine({ x, y, s }: Line, px: number, py: number): { stationM: number; offsetM: number } {
  let best = Number.POSITIVE_INFINITY;
  let out = { stationM: 0, offsetM: 0 };
  for (let i = 0; i + 1 < x.length; i++) {
    const dx = x[i + 1] - x[i];
    const dy = y[i + 1] - y[i];
    const length = s[i + 1] - s[i];
    const t = Math.min(1, Math.max(0, ((px - x[i]) * dx + (py - y[i]) * dy) / (length * length)));
    const ex = px - x[i] - t * dx;
    const ey = py - y[i] - t * dy;
    const away = Math.hypot(ex, ey);
    if (away >= best) continue;
    best = away;
    out = { stationM: s[i] + t * length, offsetM: dx * ey - dy * ex > 0 ? -away : away };
  }
  return out;
}

/** Writes key.json (columns) and key.csv (one line a station). */
export async function writeKey(folder: string, key: readonly KeyRoad[]): Promise<void> {
  const head = {
    schema: 'brinkbook/answer-key@1',
    invented: 'Tamarrow Fire District does not exist; every number here follows from a recipe.',
    crs: `EPSG:${EPSG}`,
    gridScale: round(gridScale, 8),
    convergenceDeg: round(convergenceDeg, 5),
    seed,
    noise,
    places: { hard: hardPlaces, leftOut: leftOutPlaces },
    units:
      'x, y, endX, endY, edgeX, edgeY: grid metres. All other lengths: metres on the ground. edgeM, firmM: from the true middle line outward. drawnOffsetM: from the line as drawn, positive right. lineOffsetM: the true middle line from the drawn line, positive right. Azimuths true.',
  };
  const roads = key.map(
    ({ key: id, name, columns }) =>
      `{"key":${JSON.stringify(id)},"name":${JSON.stringify(name)},"columns":{\n${Object.entries(columns)
        .map(([label, values]) => `${JSON.stringify(label)}:${JSON.stringify(values)}`)
        .join(',\n')}\n}}`,
  );
  await writeFile(`${folder}/key.json`, `{"head":${JSON.stringify(head)},\n"roads":[${roads.join(',\n')}]}\n`);
  const labels = Object.keys(key[0].columns);
  const lines = [`road,${labels.join(',')}`];
  for (const { key: id, columns } of key) {
    for (let i = 0; i < columns.x.length; i++)
      lines.push(`${id},${labels.map((label) => columns[label][i] ?? '').join(',')}`);
  }
  await writeFile(`${folder}/key.csv`, `${lines.join('\n')}\n`);
}
