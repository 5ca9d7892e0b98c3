import type { Study, StudyBenchStation } from '../study/index.ts';
import { toRadians } from '../units/index.ts';
import type { PlanFrame } from './plan-frame.ts';

/** The bench on the page: at each station where the road line runs and which way is its right. */
export interface BenchLines {
  readonly stations: readonly StudyBenchStation[];
  /** Page point at an offset from the road line at station element `i`, metres to the right of its drawing. */
  point(i: number, offsetM: number): [number, number];
  /** Nearest station element and the offset there of [along, aside], metres. */
  placed(along: number, aside: number): { i: number; offsetM: number };
}

/** The stations that fall near the plan's box, with their geometry. */
export function benchLines(study: Study, frame: PlanFrame): BenchLines {
  const all = study.bench?.stations ?? [];
  const { box, ground } = frame;
  const reach = 40 * frame.scale;
  // Lines run on past the neat line, where they are cut.
  const past = 8 * frame.scale;
  const stations = all.filter((station) => {
    const [x, y] = frame.at(station);
    return x > box.x0 - reach && x < box.x1 + reach && y > box.y0 - past && y < box.y1 + past;
  });
  const middle = stations.map((station) => ground.place(station));
  const right = stations.map(({ azimuthDeg }) => {
    const turn = toRadians(azimuthDeg + 90 - ground.azimuthDeg);
    return [Math.cos(turn), Math.sin(turn)];
  });
  return {
    stations,
    point(i, offsetM) {
      const [x, y] = frame.page([middle[i][0] + right[i][0] * offsetM, middle[i][1] + right[i][1] * offsetM]);
      return [x, y];
    },
    placed(along, aside) {
      let best = 0;
      let least = Number.POSITIVE_INFINITY;
      middle.forEach(([x, y], i) => {
        const d = (x - along) ** 2 + (y - aside) ** 2;
        if (d < least) [least, best] = [d, i];
      });
      const [x, y] = middle[best] ?? [0, 0];
      const [rx, ry] = right[best] ?? [1, 0];
      return { i: best, offsetM: (along - x) * rx + (aside - y) * ry };
    },
  };
}

/** Runs of stations at which `offsetOf` tells an offset, each as page points x, y flat. */
export function offsetRuns(bench: BenchLines, offsetOf: (station: StudyBenchStation) => number | null): number[][] {
  const runs: number[][] = [];
  let run: number[] = [];
  bench.stations.forEach((station, i) => {
    const offset = offsetOf(station);
    if (offset === null) {
      if (run.length > 2) runs.push(run);
      run = [];
    } else {
      run.push(...bench.point(i, offset));
    }
  });
  if (run.length > 2) runs.push(run);
  return runs;
}
