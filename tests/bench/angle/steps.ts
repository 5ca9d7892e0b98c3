import { lineBetween, noSurroundings, sampleOfLine, stepsOn } from '../../../src/descent/index.ts';
import { seededRandom } from '../../../src/units/index.ts';
import { formulaHill } from '../../helpers/hill.ts';
import { type SlopeCase, slopeGround, slopeKinds } from '../../helpers/slope-ground.ts';
import { keys } from '../../helpers/slope-ground-sample.ts';

/** False alarms and misses of the rule for steps, and of a rule by percentiles, on simulated hillsides. */
const COUNT = Number(process.argv[2] ?? 40);
const random = seededRandom(31);

for (const kind of [...slopeKinds, 'terrace wall 2 m', 'low wall 1.2 m'] as const) {
  let steps = 0;
  let byPercentile = 0;
  let placed = 0;
  let height = 0;
  for (let i = 0; i < COUNT; i++) {
    const base = kind === 'terrace wall 2 m' || kind === 'low wall 1.2 m' ? 'two' : kind;
    const c: SlopeCase = {
      kind: base,
      lengthM: 20 + Math.round(60 * random.next()),
      sigmaM: 0.04 * 5 ** random.next(),
      correlationM: [0.5, 2, 5][i % 3],
      wavesM: 0.08,
      steepDeg: 18 + 38 * random.next(),
      seed: Math.floor(random.next() * 2 ** 31),
      cellM: 1,
    };
    const ground = slopeGround(c);
    const wallAt = c.lengthM * (0.2 + 0.6 * random.next());
    const wallM = kind === 'terrace wall 2 m' ? 2 : kind === 'low wall 1.2 m' ? 1.2 : 0;
    const [ux, uy] = ground.direction;
    const memo = new Map<number, number>();
    const post = (col: number, row: number): number => {
      const k = (col + 4096) * 8192 + row + 4096;
      if (!memo.has(k)) {
        const d = (col - ground.start[0]) * ux + (row - ground.start[1]) * uy;
        memo.set(k, ground.post(col, row) - wallM * Math.min(1, Math.max(0, (d - wallAt) / 0.3)));
      }
      return memo.get(k)!;
    };
    const bilinear = formulaHill((x, y) => {
      const col = Math.floor(x);
      const row = Math.floor(y);
      const fx = x - col;
      const fy = y - row;
      return (
        (post(col, row) * (1 - fx) + post(col + 1, row) * fx) * (1 - fy) +
        (post(col, row + 1) * (1 - fx) + post(col + 1, row + 1) * fx) * fy
      );
    });
    const hill = {
      ...bilinear,
      cubicHeights(x: number, y: number, dx: number, dy: number, n: number, out: Float64Array, offset: number) {
        for (let i = 0; i < n; i++) out[offset + i] = keys(post, x + i * dx, y + i * dy);
      },
    };
    const [x, y] = ground.start;
    const line = lineBetween({ x, y }, { x: x + ux * c.lengthM, y: y + uy * c.lengthM }, 'limit')!;
    const found = stepsOn(hill, sampleOfLine(hill, line), noSurroundings);
    if (found.length > 0) steps++;
    if (found.length > 0) height += Math.max(...found.map((s) => s.heightM));
    if (found.some((s) => Math.abs(s.distanceM - wallAt) < 3)) placed++;
    const z = Float64Array.from({ length: 2 * c.lengthM + 17 }, (_, k) => {
      const d = k / 2 - 4;
      const out = new Float64Array(1);
      hill.heights(x + ux * d, y + uy * d, 0, 0, 1, out, 0);
      return out[0];
    });
    if (percentileRule(z)) byPercentile++;
  }
  const share = (n: number): string => `${((100 * n) / COUNT).toFixed(0)} %`.padStart(6);
  console.log(
    `${kind.padEnd(18)} rule of slopes ${share(steps)}  placed ${share(placed)}  mean height ${(height / Math.max(1, steps)).toFixed(2)}  rule of percentiles ${share(byPercentile)}`,
  );
}

/** The fall in 2 m exceeds the 85th percentile of the other 2 m falls within 12 m by 1.2 m. Heights every 0.5 m. */
function percentileRule(z: Float64Array): boolean {
  const fall = Float64Array.from({ length: z.length - 4 }, (_, i) => z[i] - z[i + 4]);
  for (let i = 8; i < fall.length - 4; i++) {
    const others: number[] = [];
    for (let j = Math.max(0, i - 24); j <= Math.min(fall.length - 1, i + 24); j++) {
      if (Math.abs(j - i) >= 4) others.push(fall[j]);
    }
    others.sort((a, b) => a - b);
    if (fall[i] - others[Math.floor(0.85 * (others.length - 1))] > 1.2) return true;
  }
  return false;
}
