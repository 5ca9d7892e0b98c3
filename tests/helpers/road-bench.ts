import { type Bench, type BenchInput, defaultSetbacks, findBench, stationedLine } from '../../src/road/index.ts';
import type { RoadGround } from './road-ground.ts';

/** The bench input of a made road: its drawn line, no other road, nothing mapped. */
export const roadInput = (
  { ground, drawn }: Pick<RoadGround, 'ground' | 'drawn'>,
  more: Partial<BenchInput> = {},
): BenchInput => ({
  ground,
  line: stationedLine(drawn),
  rest: new Float64Array(0),
  structures: [],
  obstacles: [],
  medians: [],
  carriageway: [{ fromM: 0, toM: Number.POSITIVE_INFINITY, widthM: 6, rule: '2 lanes of 3 m' }],
  setbacks: defaultSetbacks,
  ...more,
});

/** The bench of a made road, its first and last 10 m left out. */
export function benchOf(road: RoadGround, more: Partial<BenchInput> = {}): Bench {
  const input = roadInput(road, more);
  return findBench(input, 10, input.line.stationM.at(-1)! - 10);
}
