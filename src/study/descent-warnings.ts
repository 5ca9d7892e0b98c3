import { classOf } from '../book/index.ts';
import type { Descent } from '../descent/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../units/index.ts';
import type { StudyWarning } from './study.ts';

/** A patient this far off the fall line pulls the litter sideways, degrees. */
const SIDE_PULL_DEG = 15;
/** Loose ground begins to roll at about this angle [source: allen-steep-angle]. */
const ROCKFALL_DEG = 30;

/** What a crew must be told of a descent. */
export function descentWarnings(descent: Descent, units: UnitSystem): StudyWarning[] {
  const { angle, steps, line, nearbyMaxDeg, sidePullDeg, crossings } = descent;
  const length = (m: number): string => formatLength(m, units);
  const list: StudyWarning[] = [];
  const say = (code: string, severity: StudyWarning['severity'], text: string): void => {
    list.push({ code, severity, text });
  };
  for (const step of steps) {
    const source =
      step.source === 'ground'
        ? 'in the ground'
        : step.source === 'mark'
          ? 'marked'
          : step.source === 'measured'
            ? 'measured'
            : 'mapped';
    say(
      'vertical-step',
      'stop',
      `Vertical step of about ${length(step.heightM)}, ${source}, ${length(step.distanceM)} from the edge: planned as high.`,
    );
  }
  if (sidePullDeg !== null && sidePullDeg > SIDE_PULL_DEG) {
    say(
      'side-pull',
      'check',
      `Side pull, swing: the patient point lies ${formatDegrees(sidePullDeg)} off the fall line.`,
    );
  }
  if (descent.nearestEdgeTaken) {
    say(
      'patient-edge',
      'check',
      'The line straight up from the patient point meets no edge of this bench: the nearest point of the edge was taken.',
    );
  }
  if (line.why === 'no data') {
    say('no-data', 'check', `Elevation data end ${length(line.lengthM)} from the edge: what lies beyond is not known.`);
  }
  if (line.why === 'limit') {
    say('limit', 'check', `The slope goes on beyond ${length(line.lengthM)}, where this study ends.`);
  }
  if (descent.whole) {
    say(
      'fall-line-bends',
      'check',
      `The fall line bends ${length(line.lengthM)} from the edge and goes on to ${length(descent.whole.horizontalM)}: the rope runs straight, the load may not.`,
    );
  }
  for (const crossing of crossings) {
    const what = crossing.kind === 'bench' ? 'level ground' : `a ${crossing.kind}`;
    say(
      'crossing',
      'note',
      `The descent meets ${crossing.kind === 'water' ? 'water' : what} at ${length(crossing.distanceM)}, ${length(crossing.widthM)} wide, and goes on.`,
    );
  }
  if (!angle) {
    say('short-slope', 'check', `The slope is only ${length(line.lengthM)} long: too short for an angle class.`);
    return list;
  }
  const { rule } = angle;
  if (angle.shortPosts !== null) {
    say(
      'short-slope',
      'check',
      `Short slope: angle ${formatDegrees(angle.rangeDeg[0])} to ${formatDegrees(angle.rangeDeg[1])} from ${angle.shortPosts} posts.`,
    );
  }
  if (angle.rough) {
    say(
      'rough-ground',
      'check',
      `Ground looks rough at ${length(3)} to ${length(10)}: short steeper stretches are possible; check on site.`,
    );
  }
  if (angle.errorUnknown) {
    say(
      'accuracy-unknown',
      'check',
      'Vertical accuracy not stated: the range is estimated from the data themselves and probably too narrow.',
    );
  }
  const reached = classOf(nearbyMaxDeg, rule);
  const words = `Within ${length(3)} either side along the road up to ${formatDegrees(nearbyMaxDeg)}`;
  if (rankOf[reached] > rankOf[angle.planAs]) {
    say('steeper-nearby', 'check', `${words}: ${reached}, a steeper class than planned here.`);
  }
  if (angle.rangeDeg[1] >= ROCKFALL_DEG) {
    say('rockfall', 'note', 'Loose ground begins to roll at about 30°: keep the fall line clear below anyone working.');
  }
  return list;
}

const rankOf = { low: 0, steep: 1, high: 2 } as const;
