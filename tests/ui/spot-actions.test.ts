import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Study } from '../../src/study/index.ts';
import type { Deps } from '../../src/ui/actions/deps.ts';
import type { Question } from '../../src/ui/actions/question.ts';
import { createSpotActions } from '../../src/ui/actions/spot-actions.ts';
import type { StudyActions } from '../../src/ui/actions/study-actions.ts';
import { startPlace } from '../../src/ui/address.ts';
import { emptyStudy, usePlace, useStudy } from '../../src/ui/state/index.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

const METRES = 111_320;
const EAST_M = METRES * Math.cos((44 * Math.PI) / 180);
/** A road that runs due east from -128 along 44° north, stations 400 to 440. */
const stations = Array.from({ length: 41 }, (_, i) => ({
  stationM: 400 + i,
  azimuthDeg: 90,
  lon: -128 + i / EAST_M,
  lat: 44,
}));
const at = (eastM: number) => ({ lon: -128 + eastM / EAST_M, lat: 44 });
const idAt = (eastM: number): string => `S:E1:${Math.round((400 + eastM) * 10)}:0:90`;

/** A study whose first layout turns at the engine that stands so far along, and is anchored at another. */
const studyWith = (eastM: number): Study =>
  studyFixture({
    bench: { stations } as unknown as Study['bench'],
    spots: [{ id: idAt(eastM) }, { id: 'S:E2:4390:0:90' }] as unknown as Study['spots'],
    layouts: [
      { id: 'L1', anchor: 'S:E2:4390:0:90', turn: idAt(eastM), lines: { belay: { anchor: null } } },
    ] as unknown as Study['layouts'],
  });
const answered = (study: Study): void =>
  useStudy.setState({ answer: { study, shapes: { type: 'FeatureCollection', features: [] }, tookMs: 1 } });

let asked: Question[];
let spots: ReturnType<typeof createSpotActions>;

beforeEach(() => {
  asked = [];
  const study = { ask: (question: Question) => asked.push(question) } as unknown as StudyActions;
  usePlace.setState({ ...startPlace, screen: 'study', subject: { kind: 'point', at: at(20), side: 'right' } }, true);
  spots = createSpotActions({ log: {} as Deps['log'] }, study);
  answered(studyWith(5));
});
afterEach(() => {
  useStudy.setState(emptyStudy, true);
  usePlace.setState(startPlace, true);
});

test('every move of a dragged apparatus asks anew, in the role that it had, though newer studies know it by another id', () => {
  for (const eastM of [6, 7, 8, 9]) {
    spots.move({ id: idAt(5), at: at(eastM), headingDeg: 90 });
    // The study that comes back has the apparatus where the finger had it, under the id of that place.
    answered(studyWith(eastM));
  }
  expect(asked.map(({ pins }) => pins)).toEqual([6, 7, 8, 9].map((eastM) => ({ turn: idAt(eastM) })));
});

test('let go, it is pinned where it was let go; the next drag begins with the role of that time', () => {
  spots.move({ id: idAt(5), at: at(6), headingDeg: 90 });
  answered(studyWith(6));
  spots.place({ id: idAt(5), at: at(7), headingDeg: 90 });
  expect(asked.at(-1)?.pins).toEqual({ turn: idAt(7) });
  const other = studyWith(7);
  answered({ ...other, layouts: [{ ...other.layouts[0]!, turn: null, anchor: idAt(7) }] });
  spots.move({ id: idAt(7), at: at(8), headingDeg: 90 });
  expect(asked.at(-1)?.pins).toEqual({ turn: idAt(7), anchor: idAt(8) });
});

test('an id that no study has is nobody’s apparatus', () => {
  spots.move({ id: 'S:E9:4050:0:90', at: at(6), headingDeg: 90 });
  expect(asked).toEqual([]);
});
