import { absoluteErrors, edgeCases, shareInBand } from '../../helpers/edge-cases.ts';
import { quantile, worstRun } from '../../helpers/edge-errors.ts';
import type { RoadSpec } from '../../helpers/road-ground.ts';
import * as specs from '../../helpers/road-specs.ts';

/** Edges on made roads by kind of place: node config/run.mjs tests/bench/edges/main.ts [first seed] [roads a kind] [cell]. */
const [first = 50_000, roads = 6, cellM = 1] = process.argv.slice(2).map(Number);

const kinds: Readonly<Record<string, (seed: number) => RoadSpec>> = {
  plain: specs.plainRoad,
  'through-fill': specs.throughFill,
  'second bench': specs.secondBenchRoad,
  berm: specs.bermRoad,
  rounded: specs.roundedRoad,
  turnout: specs.turnoutRoad,
  hairpin: specs.hairpinRoad,
  rough: specs.roughRoad,
  cut: specs.cutRoad,
};

console.log(`Edges of made roads, drop side, ${roads} roads a kind from seed ${first}, cells of ${cellM} m`);
console.log('metres: median | 95 % | worst road median | worst run of 10 | band holds the truth | missed | invented');
for (const [name, make] of Object.entries(kinds)) {
  const all = Array.from({ length: roads }, (_, k) => edgeCases({ ...make(first + 17 * k), cellM }));
  const drops = all.map((cases) => cases.filter((c) => c.truth === 'drop'));
  const errors = drops.map(absoluteErrors);
  const flat = all.flat().filter((c) => c.defined);
  const figures = [
    quantile(errors.flat(), 0.5).toFixed(3),
    quantile(errors.flat(), 0.95).toFixed(3),
    Math.max(...errors.map((e) => quantile(e, 0.5))).toFixed(3),
    Math.max(...errors.map((e) => worstRun(e))).toFixed(2),
    `${(100 * shareInBand(drops.flat())).toFixed(1)} %`,
    flat.filter((c) => c.truth === 'drop' && c.told !== 'drop').length,
    flat.filter((c) => c.truth !== 'drop' && c.told === 'drop').length,
  ];
  console.log(`${name.padEnd(13)} ${figures.join(' | ')}  of ${flat.length} station sides`);
}
