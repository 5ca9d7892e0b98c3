import type { MeasurementRecord } from '../../book/index.ts';
import { useBook } from '../state/index.ts';
import type { Deps } from './deps.ts';
import { newId } from './new-id.ts';

/** A reading as a person entered it. */
export type NewReading = Pick<MeasurementRecord, 'reading' | 'by' | 'on' | 'tool' | 'stretchM'>;

/** Readings taken on the ground, and somebody's word that they are to be taken. */
export interface ReadingActions {
  add(siteId: string, reading: NewReading, words: string): void;
  remove(id: string): void;
  correct(
    siteId: string,
    correction: {
      readonly quantity: MeasurementRecord['reading']['quantity'];
      readonly measurementIds: readonly string[];
      readonly computed: number | null;
      readonly by: string;
      readonly on: string;
      readonly reason: string;
    },
  ): void;
}

export function createReadingActions({ log }: Pick<Deps, 'log'>): ReadingActions {
  return {
    add: (siteId, reading, words) => {
      const place = useBook.getState().sites.get(siteId)?.place;
      const at = place ? { lon: place.lon, lat: place.lat } : null;
      const set = { siteId, at, ...reading };
      void log.commit(`Enter ${words}`, [{ table: 'measurements', id: newId('reading'), set }]);
    },
    remove: (id) => void log.commit('Delete reading', [{ table: 'measurements', id, set: { deleted: true } }]),
    correct: (siteId, correction) =>
      void log.commit('Take the readings', [
        { table: 'corrections', id: newId('correction'), set: { siteId, ...correction } },
      ]),
  };
}
