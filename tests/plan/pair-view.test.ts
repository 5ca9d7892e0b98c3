import { describe, expect, it } from 'vitest';
import { pairView } from '../../src/plan/index.ts';
import { studyFixture } from '../helpers/study-fixture.ts';
import { studyWithLayouts } from '../helpers/study-with-layouts.ts';
import { coordinates, elementsOf, ofClass, readSvg } from '../helpers/svg-reading.ts';

const sizes = [
  { width: 816, height: 866 },
  { width: 618, height: 700 },
  { width: 1400, height: 480 },
];

describe('pairView', () => {
  it.each(sizes)('one scale and one x axis for both, one pair of bars, inside $width × $height', (size) => {
    const study = studyWithLayouts();
    const { svg, at } = pairView(study, null, { units: 'us', ...size });
    const root = readSvg(svg);
    const [x0, y0, x1] = coordinates(ofClass(root, 'path', 'descent')[0]!);
    const scale = (x1! - x0!) / study.descent!.horizontalM;
    // The second ground line runs from the edge down.
    const ground = coordinates(ofClass(root, 'path', 'ground')[1]!);
    const { distanceM, elevationM } = study.profile!;
    distanceM.forEach((m, i) => {
      expect(ground[2 * i]!).toBeCloseTo(x0! + m * scale, 0);
      expect(ground[2 * i + 1]! - ground[1]!).toBeCloseTo((elevationM[0]! - elevationM[i]!) * scale, 0);
    });
    expect(at!.px(0)).toBeCloseTo(x0!, 0);
    expect(at!.px(10) - at!.px(0)).toBeCloseTo(10 * scale, 0);
    expect(at!.distanceAt(at!.px(7))).toBeCloseTo(7, 6);
    expect(at!.planY).toBeCloseTo(y0!, 0);
    expect(at!.planBottom).toBeLessThan(Math.min(...ground.filter((_, i) => i % 2 === 1)));
    expect(Math.max(...ground.filter((_, i) => i % 2 === 1))).toBeLessThan(size.height);
    expect(elementsOf(root, 'text').filter(({ textContent }) => /^\d+ (ft|m)$/.test(textContent ?? ''))).toHaveLength(
      2,
    );
  });

  it('where nothing falls away there is the plan view alone, or why there is none', () => {
    const none = studyFixture({ edge: null, descent: null, profile: null, angle: null });
    const { svg, at } = pairView(none, null, { units: 'us', width: 816, height: 866 });
    expect(at).toBeNull();
    expect(readSvg(svg).getAttribute('aria-label')).toMatch(/^Plan view\./);
  });
});
