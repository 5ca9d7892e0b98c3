import type { SiteRecord } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import type { Study } from '../../study/index.ts';
import { formatLength } from '../../units/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { useBook, usePlace, useReading, useTool } from '../state/index.ts';
import { placeWords } from '../survey/place-words.ts';
import type { Deps } from './deps.ts';
import type { Navigate } from './navigate.ts';
import { newId } from './new-id.ts';
import { askOf } from './question.ts';
import type { StudyActions } from './study-actions.ts';

/** What can be done to sites; each is one command of the book. */
export interface SiteActions {
  /** Puts a site on the nearest edge that the ground shows on the tapped side of the road. */
  place(at: LonLat): Promise<void>;
  /** Moves a site to where its study found it. */
  moveTo(id: string, study: Study): void;
  edit(id: string, set: Partial<Omit<SiteRecord, 'id'>>, label: string): void;
  remove(id: string): void;
}

export function createSiteActions({ workers, log }: Deps, navigate: Navigate, study: StudyActions): SiteActions {
  const named = (id: string): string => useBook.getState().sites.get(id)?.name ?? 'site';
  return {
    async place(at) {
      useTool.setState({ said: 'Reading the roadside.' });
      try {
        const question = { at, side: 'of the point', patient: null, patients: 1, pins: {} } as const;
        const { study: made } = await workers.study.call('study', askOf(question));
        const id = newId('site');
        const { road } = made.site;
        const { units } = useReading.getState();
        const name = `${road.name ?? 'Unnamed road'}, ${formatLength(road.stationM, units)}`;
        const set = { name, place: placeOf(made), roadName: road.name, roadId: road.id };
        if (!(await log.commit(`Place ${name}`, [{ table: 'sites', id, set }]))) return;
        useTool.setState({ tool: 'look', said: placeWords(made, units) });
        navigate.go({ subject: { kind: 'site', id } });
        study.visit(false);
      } catch (error) {
        useTool.setState({ said: sentenceOf(error) });
      }
    },
    moveTo(id, made) {
      const { road } = made.site;
      useTool.setState({ said: placeWords(made, useReading.getState().units) });
      void log.commit(`Move ${named(id)}`, [
        { table: 'sites', id, set: { place: placeOf(made), roadName: road.name, roadId: road.id } },
      ]);
    },
    edit: (id, set, label) => void log.commit(label, [{ table: 'sites', id, set }]),
    remove(id) {
      const { subject } = usePlace.getState();
      void log.commit(`Delete ${named(id)}`, [{ table: 'sites', id, set: { deleted: true } }]).then((done) => {
        if (!done || subject?.kind !== 'site' || subject.id !== id) return;
        navigate.go({ screen: 'survey', subject: null });
        study.clear();
      });
    },
  };
}

/** On the edge that the ground shows; where it shows none, where the finger was. */
function placeOf({ edge, site }: Study): SiteRecord['place'] {
  const { lon, lat } = edge ?? site;
  return { lon, lat, sideAzimuthDeg: site.sideAzimuthDeg % 360 };
}
