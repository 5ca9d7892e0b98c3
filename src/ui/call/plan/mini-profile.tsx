/** @jsxImportSource preact */
import type { Study } from '../../../study/index.ts';

const WIDTH = 186;
const HEIGHT = 104;
/** Ground kept behind the edge, metres, and room above it for the apparatus, drawing units. */
const BEHIND_M = 10;
const TOP = 16;
/** The rule's rays are this long, drawing units. */
const RAY = 62;

/** The profile at true scale, small: ground, the taut rope, the rule's two rays from the edge, the stretch where the class is read. */
export function MiniProfile({ study }: { study: Study }) {
  const { profile, edge, descent, angle } = study;
  if (!profile || !edge || !descent) return null;
  const runM = descent.horizontalM + BEHIND_M + 4;
  const fallM = Math.max(descent.dropM, 1);
  // One scale for both, so that an angle on the glass is the angle of the ground.
  const scale = Math.min(WIDTH / runM, (HEIGHT - TOP - 8) / fallM);
  const x = (m: number): number => round((m + BEHIND_M) * scale);
  const y = (z: number): number => round(TOP + (edge.elevationM - z) * scale);
  const behind = profile.behind.distanceM.map((m, i) => [x(m), y(profile.behind.elevationM[i]!)] as const).reverse();
  const below = profile.distanceM.map((m, i) => [x(m), y(profile.elevationM[i]!)] as const);
  const ground = path([...behind.filter(([px]) => px >= 0), ...below]);
  const last = below.at(-1) ?? [0, 0];
  const first = behind.find(([px]) => px >= 0) ?? below[0]!;
  const rope = path(
    descent.ropeCorners.distanceM.map((m, i) => [x(m), y(descent.ropeCorners.elevationM[i]!)] as const),
  );
  const stretch = angle
    ? below.filter((_, i) => profile.distanceM[i]! >= angle.stretchM[0] && profile.distanceM[i]! <= angle.stretchM[1])
    : [];
  const ray = (deg: number): string => {
    const at = (deg * Math.PI) / 180;
    return `M${x(0)} ${y(edge.elevationM)}l${round(RAY * Math.cos(at))} ${round(RAY * Math.sin(at))}`;
  };
  /** The limit at the end of its ray: beside it, or below it, so that the two keep apart. */
  const mark = (deg: number, where: 'beside' | 'below') => {
    const at = (deg * Math.PI) / 180;
    const [right, down] = where === 'beside' ? [2, 5] : [0, 13];
    return (
      <text
        x={x(0) + RAY * Math.cos(at) + right}
        y={y(edge.elevationM) + RAY * Math.sin(at) + down}
        text-anchor={where === 'beside' ? 'start' : 'middle'}
      >
        {Math.round(deg)}°
      </text>
    );
  };
  return (
    <svg class="mini" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
      <path class="earth" d={`${ground}L${last[0]} ${HEIGHT}L${first[0]} ${HEIGHT}Z`} />
      {angle && <path class="ray" d={ray(angle.rule.lowMaxDeg) + ray(angle.rule.highMinDeg)} />}
      <path class={angle?.class === 'undecided' ? 'ground undecided' : 'ground'} d={ground} />
      {stretch.length > 1 && <path class="stretch" d={path(stretch)} />}
      <path class="rope" d={rope} />
      <circle class="end" cx={last[0]} cy={last[1] - 4} r="5" />
      <path class="quarters" d={`M${last[0]} ${last[1] - 4}v-5a5 5 0 0 1 5 5zv5a5 5 0 0 1 -5 -5z`} />
      {angle && mark(angle.rule.lowMaxDeg, 'beside')}
      {angle && mark(angle.rule.highMinDeg, 'below')}
    </svg>
  );
}

const round = (value: number): number => Math.round(value * 10) / 10;
const path = (points: readonly (readonly [number, number])[]): string =>
  points.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${px} ${py}`).join('');
