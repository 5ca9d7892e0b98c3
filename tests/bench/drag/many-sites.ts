import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../../browser/app.ts';
import { demoBook, wholeBookFile } from '../../helpers/demo-book.ts';

interface Line {
  readonly geometry: { readonly type: string; readonly coordinates: readonly [number, number][] };
  readonly properties: { readonly highway?: string; readonly name?: string };
}

const demo = (name: string) => JSON.parse(readFileSync(join(root, 'data/demo', name), 'utf8'));

/** The demo's book file with as many sites as asked for, evenly along its roads. */
export async function manySites(count: number): Promise<Uint8Array<ArrayBuffer>> {
  const book = await demoBook();
  const given = book.tables.sites;
  const { features } = demo('roads.geojson') as { features: readonly Line[] };
  const legs = features
    .filter(({ geometry, properties }) => geometry.type === 'LineString' && properties.highway && properties.name)
    .flatMap(({ geometry: { coordinates }, properties }) =>
      coordinates.slice(1).map((to, i) => {
        const from = coordinates[i]!;
        const metres = Math.hypot((to[0] - from[0]) * Math.cos((44 * Math.PI) / 180), to[1] - from[1]);
        return { from, to, metres, road: properties.name! };
      }),
    );
  const whole = legs.reduce((sum, { metres }) => sum + metres, 0);
  let leg = 0;
  let begins = 0;
  const sites = Array.from({ length: count }, (_, i) => {
    const alongM = (i * whole) / count;
    while (leg + 1 < legs.length && begins + legs[leg]!.metres < alongM) begins += legs[leg++]!.metres;
    const { from, to, metres, road } = legs[leg]!;
    const t = Math.min(1, (alongM - begins) / metres);
    const like = given[i % given.length]!;
    const at = { lon: from[0] + t * (to[0] - from[0]), lat: from[1] + t * (to[1] - from[1]) };
    return {
      ...like,
      id: `${like.id}-${i}`,
      name: `${like.name} ${i}`,
      roadName: road,
      place: { ...like.place, ...at },
      patientPoint: null,
    };
  });
  return wholeBookFile({ ...book, tables: { ...book.tables, sites } });
}
