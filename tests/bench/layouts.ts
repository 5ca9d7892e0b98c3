import { findLayouts, layoutSpots } from '../../src/spots/index.ts';
import { questionOf, type TypicalSite, typicalSites } from '../spots/layout-sites.ts';
import { sideBySide, span } from './harness.ts';

const RUNS = 15;

/** Layouts of three typical roadsides with the shipped fleet: spots and layouts, layouts alone, and around a moved pin. */
export async function benchLayouts(print: (line: string) => void): Promise<void> {
  print(`Layouts, warm; milliseconds, least and most of ${RUNS}`);
  const pick = (start: string): TypicalSite => typicalSites.find(({ name }) => name.startsWith(start))!;
  for (const site of [pick('3:'), pick('4:'), pick('5:')]) {
    const question = questionOf(site);
    const { ground, fleet, arrivals, rates } = question;
    const coming = fleet.filter(({ id }) => arrivals.some(({ apparatusId }) => apparatusId === id));
    const spots = layoutSpots(ground, coming, rates);
    const [first] = findLayouts({ ...question, spots }).layouts;
    const times = await sideBySide(RUNS, {
      whole: () => findLayouts(question).layouts.length,
      layouts: () => findLayouts({ ...question, spots }).layouts.length,
      moved: () => findLayouts({ ...question, spots, pins: { anchor: first!.anchor.id } }).layouts.length,
    });
    print(
      `${site.name.padEnd(36)} ${String(spots.length).padStart(4)} spots   spots and layouts ${span(times.whole)}` +
        `   layouts ${span(times.layouts)} = ${(times.layouts.min / times.whole.min).toFixed(2)} of it   pin moved ${span(times.moved)}`,
    );
  }
}
