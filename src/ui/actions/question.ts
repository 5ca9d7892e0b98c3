import type { LonLat } from '../../geo/index.ts';
import type { Pins } from '../../study/index.ts';
import type { SideAsked, StudyAsk } from '../../workers/index.ts';
import type { Subject } from '../address.ts';
import { ruleNamed, useBook, useGiven, useReading } from '../state/index.ts';

/** What a study is asked of, beside rule, conditions and units. */
export interface Question {
  readonly at: LonLat;
  readonly side: SideAsked;
  readonly patient: LonLat | null;
  readonly patients: number;
  readonly pins: Pins;
  /** The site whose readings count; left out for a point. */
  readonly siteId?: string;
}

/** The question that a subject stands for; null where the book does not have the site. */
export function questionOf(subject: Subject): Question | null {
  if (subject.kind === 'point') {
    return { at: subject.at, side: subject.side ?? 'of the point', patient: null, patients: 1, pins: {} };
  }
  const site = useBook.getState().sites.get(subject.id);
  if (!site) return null;
  const { place, patientPoint, patients, pinnedAnchor, pinnedTurn, pinnedBelay } = site;
  return {
    at: { lon: place.lon, lat: place.lat },
    side: { azimuthDeg: place.sideAzimuthDeg },
    patient: patientPoint,
    patients,
    siteId: site.id,
    pins: {
      ...(pinnedAnchor && { anchor: pinnedAnchor }),
      ...(pinnedTurn && { turn: pinnedTurn }),
      ...(pinnedBelay && { belay: pinnedBelay }),
    },
  };
}

/** The question as the worker takes it, under the rule and the conditions in force. */
export function askOf(question: Question): StudyAsk {
  const { ruleName, conditions } = useGiven.getState();
  return {
    ...question,
    at: toCentimetres(question.at),
    rule: ruleNamed(ruleName),
    conditions,
    units: useReading.getState().units,
    today: new Date().toISOString().slice(0, 10),
  };
}

/** A position to the digits that the address bar carries, so that a sent address gives the same study. */
export const toCentimetres = ({ lon, lat }: LonLat): LonLat => ({
  lon: Number(lon.toFixed(7)),
  lat: Number(lat.toFixed(7)),
});
