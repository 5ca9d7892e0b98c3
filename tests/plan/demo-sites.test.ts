import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pairView, planViewSvg, profileSvg, studySvg } from '../../src/plan/index.ts';
import { completeStudy, type Study } from '../../src/study/index.ts';
import { demoDistrict } from '../helpers/demo-district.ts';
import { coordinates, elementsOf, ofClass, outlinesMeet, readSvg, textCorners } from '../helpers/svg-reading.ts';

const ids = ['kettle-bend', 'coin-toss', 'long-ladle', 'stone-skirt'];

describe('the demo sites drawn', () => {
  let district: Awaited<ReturnType<typeof demoDistrict>>;
  const studies = new Map<string, Study>();

  beforeAll(async () => {
    district = await demoDistrict();
    for (const id of ids) {
      const site = district.site(id);
      const work = await district.ground(site);
      studies.set(id, completeStudy(work, { ...district.request(site), ground: work.ground }));
    }
  }, 60_000);
  afterAll(() => district.close());

  it.each(ids)('%s: no two texts meet', (id) => {
    const study = studies.get(id)!;
    for (const svg of [
      studySvg(study, { units: 'us' }),
      studySvg(study, { units: 'metric', width: 720 }),
      planViewSvg(study, study.layouts.at(-1)?.id ?? null, { units: 'us', width: 720, height: 520 }),
      planViewSvg(study, null, { units: 'us', width: 390, height: 430 }),
      pairView(study, null, { units: 'us', width: 816, height: 866 }).svg,
      pairView(study, null, { units: 'metric', width: 618, height: 720 }).svg,
      profileSvg(study, { units: 'us', width: 390, height: 270 }),
      profileSvg(study, { units: 'us', width: 816, height: 369 }),
    ]) {
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const texts = elementsOf(readSvg(svg), 'text').map((each) => ({
        words: each.textContent,
        at: textCorners(each),
      }));
      const meeting: string[] = [];
      texts.forEach((a, i) => {
        for (const b of texts.slice(i + 1)) if (outlinesMeet(a.at, b.at)) meeting.push(`${a.words} / ${b.words}`);
      });
      expect(meeting).toEqual([]);
    }
  });

  it.each(ids)('%s: a phone’s profile says which sector is low, steep and high', (id) => {
    const root = readSvg(profileSvg(studies.get(id)!, { units: 'us', width: 390, height: 270 }));
    for (const word of ['low', 'steep', 'high']) {
      const [found] = elementsOf(root, 'text').filter(({ textContent }) => textContent === word);
      const at = textCorners(found!);
      expect(Math.min(...at.map(([, y]) => y)), word).toBeGreaterThan(0);
      expect(Math.max(...at.map(([, y]) => y)), word).toBeLessThan(270);
      expect(Math.max(...at.map(([x]) => x)), word).toBeLessThan(390);
    }
  });

  it.each(ids)('%s: the field on the plan is as long as the study says', (id) => {
    const study = studies.get(id)!;
    const root = readSvg(studySvg(study, { units: 'us' }));
    const [x0, , x1] = coordinates(ofClass(root, 'path', 'descent')[0]!);
    const scale = (x1! - x0!) / study.descent!.horizontalM;
    const field = ofClass(root, 'rect', 'haul-field')[0]!;
    expect(Number(field.getAttribute('width')) / scale / study.layouts[0]!.haulFieldM).toBeCloseTo(1, 2);
    // The main line's first leg on the page is that field too: the study's own points, drawn.
    const main = coordinates(ofClass(root, 'path', 'rope', 'main')[0]!);
    const leg = Math.hypot(main[2]! - main[0]!, main[3]! - main[1]!) / scale;
    expect(leg / study.layouts[0]!.haulFieldM).toBeCloseTo(1, 2);
  });

  it('names what decides at every site: anchor, turn, belay, edge', () => {
    for (const [id, study] of studies) {
      const words = elementsOf(readSvg(studySvg(study, { units: 'us', width: 720 })), 'text')
        .map(({ textContent }) => textContent)
        .join(' ');
      for (const name of ['anchor, ', 'belay', 'edge ', 'keep out']) expect(`${id}: ${words}`).toContain(name);
    }
  });
});
