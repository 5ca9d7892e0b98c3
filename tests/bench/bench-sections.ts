import { findBench } from '../../src/road/index.ts';
import { sampleLine } from '../../src/terrain/index.ts';
import { roadInput } from '../helpers/road-bench.ts';
import { makeRoadGround } from '../helpers/road-ground.ts';
import { roughRoad } from '../helpers/road-specs.ts';
import { sideBySide, span } from './harness.ts';

const RUNS = 40;
const STATIONS = 300;
const WIDTH = 161;

/** The bench along 300 stations of a rough made road, against sampling the heights of its cross-sections once. */
export async function benchSections(print: (line: string) => void): Promise<void> {
  const road = makeRoadGround({ ...roughRoad(5), lengthM: 400 });
  const input = roadInput(road);
  const out = new Float64Array(WIDTH);
  const { sampling, bench } = await sideBySide(RUNS, {
    sampling: () => {
      let sum = 0;
      for (let i = 0; i < STATIONS; i++) {
        const [nx, ny] = [road.normalX[i] / 2, road.normalY[i] / 2];
        sampleLine(road.ground, road.trueX[i] - 80 * nx, road.trueY[i] - 80 * ny, nx, ny, WIDTH, out);
        sum += out[80];
      }
      return sum;
    },
    bench: () => findBench(input, 50, 50 + STATIONS - 1).right.edgeOffsetM[100],
  });
  print(
    `${STATIONS} cross-sections of ${WIDTH} heights; milliseconds, least and most of ${RUNS} after a warm-up
  sampling alone ${span(sampling)}   bench, both sides ${span(bench)} = ${(bench.min / sampling.min).toFixed(0)} ×, ${((1000 * bench.min) / STATIONS).toFixed(0)} µs a station`,
  );
}
