import { describe, expect, it } from 'vitest';
import { STOP_LINE, studySentence } from '../../src/study/index.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

describe('studySentence', () => {
  it('says how to plan, the angle with its range, the rule, the rope and the drop, from the numbers of the study', () => {
    expect(studySentence(studyFixture(), 'us')).toBe(
      'Plan as steep: 33°, 31 to 36 (rule 30/45). 167 ft of rope line to where the ground levels, drop 77 ft.',
    );
    expect(studySentence(studyFixture(), 'metric')).toContain('51 m of rope line');
  });

  it('opens with the stop line where planned as high', () => {
    const base = studyFixture();
    const sentence = studySentence(studyFixture({ angle: { ...base.angle!, planAs: 'high' } }), 'us');
    expect(sentence.startsWith(STOP_LINE)).toBe(true);
  });

  it('tells undecided, steps and screening', () => {
    const base = studyFixture();
    const study = studyFixture({
      angle: { ...base.angle!, class: 'undecided' },
      descent: { ...base.descent!, steps: [{ distanceM: 20, heightM: 2.4, source: 'ground' }] },
      terrain: { ...base.terrain, screeningOnly: true, cellM: 10 },
    });
    expect(studySentence(study, 'us')).toMatch(
      /^Screening only, 33 ft cells cannot show the road bench: no spots, no layouts\. Plan as steep, undecided: .* Step of about 7\.9 ft at 66 ft\./,
    );
  });

  it('never certifies', () => {
    expect(studySentence(studyFixture(), 'us')).not.toMatch(/safe|adequate|approved/i);
  });
});
