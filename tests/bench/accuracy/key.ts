import { readFileSync } from 'node:fs';

/** The demo's answer key; see seeds/key for what each column means. */
export interface Key {
  readonly head: { readonly gridScale: number; readonly convergenceDeg: number };
  readonly roads: readonly KeyRoad[];
}

export interface KeyRoad {
  readonly key: string;
  readonly name: string;
  readonly columns: Readonly<Record<string, readonly (string | number | null)[]>>;
}

/** One side of one station of the key. */
export interface KeyStation {
  readonly road: string;
  readonly side: 'left' | 'right';
  readonly index: number;
  readonly drawnStationM: number;
  readonly kind: string;
  readonly place: string;
  readonly slope: string;
  readonly edge: { readonly lon: number; readonly lat: number } | null;
  readonly governingDeg: number | null;
  readonly dropM: number | null;
  readonly lengthM: number | null;
  readonly azimuthDeg: number | null;
  readonly stepM: number | null;
  readonly crosses: string | null;
}

/** Hard places that still have a defined edge; every other word but 'easy' is left out of the pooled figures. */
export const hardPlaces = new Set(['rounded', 'berm', 'taper', 'sparse', 'hairpin']);

/** Places where no single answer is right, so that a station without an edge is no error. */
export const noSingleAnswer = new Set(['end', 'bridge', 'mouth', 'cut-to-fill', 'marginal']);

export const readKey = (file: string): Key => JSON.parse(readFileSync(file, 'utf8'));

/** All stations of one side of a road, in order of the drawn line. */
export function keyStations(road: KeyRoad, side: 'left' | 'right'): KeyStation[] {
  const column = (name: string): readonly (string | number | null)[] => {
    const values = road.columns[name];
    if (!values) throw new Error(`The answer key has no column ${name}; make the demo again.`);
    return values;
  };
  const of = (name: string) => column(`${side}.${name}`);
  const number = (values: readonly (string | number | null)[], i: number): number | null => values[i] as number | null;
  const columns = {
    kind: of('kind'),
    place: of('place'),
    slope: of('slope'),
    lon: of('edgeLon'),
    lat: of('edgeLat'),
    governing: of('governingDeg'),
    drop: of('dropM'),
    length: of('lengthM'),
    azimuth: of('azimuthDeg'),
    step: of('stepM'),
    crosses: of('crosses'),
  };
  return column('drawnStationM').map((drawn, index) => ({
    road: road.key,
    side,
    index,
    drawnStationM: drawn as number,
    kind: String(columns.kind[index]),
    place: String(columns.place[index]),
    slope: String(columns.slope[index]),
    edge: columns.lon[index] === null ? null : { lon: columns.lon[index] as number, lat: columns.lat[index] as number },
    governingDeg: number(columns.governing, index),
    dropM: number(columns.drop, index),
    lengthM: number(columns.length, index),
    azimuthDeg: number(columns.azimuth, index),
    stepM: number(columns.step, index),
    crosses: columns.crosses[index] as string | null,
  }));
}

/** The first stations of a list as words, with how they count: ": cinder right 1200 (berm), …". */
export function stationWords(stations: readonly KeyStation[]): string {
  if (stations.length === 0) return '';
  const words = stations.slice(0, 16).map((s) => `${s.road} ${s.side} ${s.index} (${s.place}, ${s.slope})`);
  return `: ${words.join(', ')}${stations.length > 16 ? ' …' : ''}`;
}
