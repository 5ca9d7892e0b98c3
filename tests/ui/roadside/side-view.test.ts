import { describe, expect, test } from 'vitest';
import { sideView } from '../../../src/ui/roadside/side-view.ts';

/** A level bench of 6 m, then ground that falls one in two. */
const profile = {
  distanceM: [0, 5, 10, 15, 20],
  elevationM: [100, 97.5, 95, 92.5, 90],
  angleDeg: [26.6, 26.6, 26.6, 26.6, 26.6],
  behind: { distanceM: [-2, -4, -6], elevationM: [100, 100, 100] },
};
const points = (path: string): number[][] =>
  path
    .replace(/V.*$/, '')
    .slice(1)
    .split('L')
    .map((pair) => pair.split(' ').map(Number));

describe('the ground from the side, where a step reads it', () => {
  test('is at one scale both ways and holds both standers from eyes to feet', () => {
    const view = sideView(profile, [5, 15], 354, 114)!;
    const [above, below] = view.ends;
    expect(below.x - above.x).toBeCloseTo(10 * view.scale, 0);
    expect(below.y - above.y).toBeCloseTo(5 * view.scale, 0);
    expect(above.y - above.eyeY).toBeCloseTo(1.6 * view.scale, 0);
    for (const { x, y, eyeY } of view.ends) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(354);
      expect(eyeY).toBeGreaterThan(0);
      expect(y).toBeLessThan(114);
    }
    const line = points(view.stretch);
    expect(line[0]).toEqual([above.x, above.y]);
    expect(line.at(-1)).toEqual([below.x, below.y]);
  });

  test('runs to the sides of the box, no farther than the ground is known', () => {
    const line = points(sideView(profile, [0, 20], 354, 114)!.ground);
    expect(line.map(([x]) => x)).toEqual([...line.map(([x]) => x)].sort((a, b) => a! - b!));
    expect(line[0]![0]).toBeGreaterThanOrEqual(0);
    expect(line.at(-1)![0]).toBeLessThanOrEqual(354);
  });

  test('takes the bench behind the edge for a tape, and is nothing where the ground ends before that', () => {
    const [anchor, edge] = sideView(profile, [-5, 0], 354, 114)!.ends;
    expect(anchor.y).toBe(edge.y);
    expect(sideView(profile, [-7, 0], 354, 114)).toBeNull();
    expect(sideView(profile, [15, 21], 354, 114)).toBeNull();
    expect(
      sideView({ ...profile, distanceM: [], elevationM: [], behind: { distanceM: [], elevationM: [] } }, [0, 5], 9, 9),
    ).toBeNull();
  });
});
