import { expect, it } from 'vitest';
import type { MeasurementRecord } from '../../src/book/index.ts';
import { runStudy, type Study } from '../../src/study/index.ts';
import { demoDistrict } from '../helpers/demo-district.ts';
import { oneOfEach } from '../helpers/full-book.ts';

it('an edge measured nearer than a guardrail takes no barrier off the rope: no tension falls, no turned haul needs fewer resets', async () => {
  const district = await demoDistrict();
  const { inputs } = await district.ground(district.site('barrier-reach'));
  await district.close();
  const study = (measurements: readonly MeasurementRecord[]): Study => {
    const field = { measurements, corrections: [], check: null, inFieldOn: null, contested: [] };
    const found = runStudy({ ...district.request(district.site('barrier-reach')), ...inputs, field });
    if (!found.ok) throw found.error;
    return found.value;
  };
  const edge = (value: number): MeasurementRecord => ({
    ...oneOfEach.measurements,
    ...{ reading: { quantity: 'edgeOffsetM', value }, tool: 'tape', stretchM: null, at: inputs.at, sigma: null },
  });
  const plain = study([]);
  const computed = study([edge(0)]).field[0]!.computed!;
  const met = ({ layouts }: Study) =>
    layouts.filter(({ kind, forces }) => kind === 'turned' && forces.every(({ ok }) => ok !== 'no'));
  const fewest = (of: Study): number => Math.min(...met(of).map(({ resets }) => resets));
  const hanging = (of: Study): number => Math.min(...of.layouts.map(({ tensionKn }) => tensionKn.hanging));
  expect(met(plain).length).toBeGreaterThan(0);
  for (const nearerM of [0.2, 0.5]) {
    const worse = study([edge(computed - nearerM)]);
    expect([nearerM, fewest(worse) >= fewest(plain)]).toEqual([nearerM, true]);
    expect([nearerM, hanging(worse) >= hanging(plain) - 0.02]).toEqual([nearerM, true]);
  }
}, 60_000);
