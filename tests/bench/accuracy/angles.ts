import { type AngleClass, type AngleRule, classOf } from '../../../src/book/index.ts';
import { type KeyStation, stationWords } from './key.ts';
import { mean, quantile, shareOf } from './statistics.ts';

/** One descent: what was told under one stated error, beside the truth on the same line. */
export interface AngleCase {
  readonly station: KeyStation;
  /** True governing angle on the line that the tool told. */
  readonly truthDeg: number;
  readonly truthStep: boolean;
  readonly truthDropM: number;
  readonly governingDeg: number;
  readonly rangeDeg: readonly [number, number];
  readonly class: AngleClass | 'undecided';
  readonly planAs: AngleClass;
  readonly probability: Readonly<Record<AngleClass, number>>;
  readonly dropM: number;
  readonly lengthM: number;
}

const rank = { low: 0, steep: 1, high: 2 } as const;

/** Class that the truth asks for: a wall is planned as high. */
const truthClass = (c: AngleCase, rule: AngleRule): AngleClass => (c.truthStep ? 'high' : classOf(c.truthDeg, rule));

/** Prints the angle part of the report for one stated error. */
export function reportAngles(title: string, cases: readonly AngleCase[], rule: AngleRule): void {
  console.log(`\n${title}: ${cases.length} descents`);
  const easy = cases.filter((c) => c.station.place === 'easy');
  const kinds = [...new Set(easy.map((c) => c.station.slope))].sort();
  console.log(
    'Governing angle on easy places: bias | 95 % of error | range holds the truth | truth above range | descents',
  );
  angleLine('all', easy);
  for (const kind of kinds)
    angleLine(
      `  ${kind}`,
      easy.filter((c) => c.station.slope === kind),
    );
  const plain = easy.filter((c) => c.station.slope !== 'bench' && c.station.slope !== 'rough');
  angleLine('  all but bench, rough', plain);
  const drop = easy.map((c) => Math.abs(c.dropM / c.truthDropM - 1));
  console.log(
    `Drop: 95 % within ${(quantile(drop, 0.95) * 100).toFixed(2)} %, largest ${(Math.max(...drop) * 100).toFixed(1)} %`,
  );

  const tooGentle = cases.filter((c) => rank[c.planAs] < rank[truthClass(c, rule)]);
  const over = cases.filter((c) => !c.truthStep && overLimit(c.truthDeg, rule) <= 3);
  const gentlerOver = shareOf(over, (c) => rank[c.planAs] < rank[truthClass(c, rule)]);
  console.log(
    `Planned gentler than the truth: ${percent(tooGentle.length / cases.length)} of all${stationWords(tooGentle.map((c) => c.station))}; ${percent(gentlerOver)} of ${over.length} with the truth 0 to 3° over a limit`,
  );
  for (const below of [2, 4, 6]) {
    const near = cases.filter(
      (c) => !c.truthStep && [rule.lowMaxDeg, rule.highMinDeg].some((l) => Math.abs(l - c.truthDeg - below) <= 0.5),
    );
    const steeper = shareOf(near, (c) => rank[c.planAs] > rank[truthClass(c, rule)]);
    const undecided = shareOf(near, (c) => c.class === 'undecided');
    console.log(
      `  ${below}° below a limit (${near.length}): a class too steep ${percent(steeper)}, undecided ${percent(undecided)}`,
    );
  }
  calibration(cases, rule);
}

function angleLine(name: string, cases: readonly AngleCase[]): void {
  if (cases.length === 0) return;
  const error = cases.map((c) => c.governingDeg - c.truthDeg);
  const held = shareOf(cases, (c) => c.truthDeg >= c.rangeDeg[0] && c.truthDeg <= c.rangeDeg[1]);
  const above = shareOf(cases, (c) => c.truthDeg > c.rangeDeg[1]);
  console.log(
    `${name.padEnd(24)} ${mean(error).toFixed(2)}° | ${quantile(error.map(Math.abs), 0.95).toFixed(2)}° | ${percent(held)} | ${percent(above)} | ${cases.length}`,
  );
}

/** Degrees over the nearest limit below, infinity under the lowest. */
function overLimit(truthDeg: number, rule: AngleRule): number {
  const passed = [rule.lowMaxDeg, rule.highMinDeg].filter((limit) => truthDeg >= limit);
  return passed.length === 0 ? Number.POSITIVE_INFINITY : truthDeg - passed.at(-1)!;
}

/** Shown probabilities against how often the truth was of that class, in bins of 50 cases and more. */
function calibration(cases: readonly AngleCase[], rule: AngleRule): void {
  const bins = new Map<number, { stated: number[]; held: number }>();
  for (const c of cases) {
    const truth = classOf(c.truthDeg, rule);
    for (const name of ['low', 'steep', 'high'] as const) {
      const stated = c.probability[name];
      const key = Math.min(9, Math.floor(stated * 10));
      const bin = bins.get(key) ?? { stated: [], held: 0 };
      bin.stated.push(stated);
      if (truth === name) bin.held++;
      bins.set(key, bin);
    }
  }
  const words = [...bins]
    .sort(([a], [b]) => a - b)
    .filter(([, bin]) => bin.stated.length >= 50)
    .map(
      ([, bin]) => `${mean(bin.stated).toFixed(2)}→${(bin.held / bin.stated.length).toFixed(2)} (${bin.stated.length})`,
    );
  console.log(`Shown probability → observed: ${words.join('  ')}`);
}

const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;
