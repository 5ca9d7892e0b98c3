import type { MarkKind, MarkRecord } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import { useBook, usePlace, useTool } from '../state/index.ts';
import { leastCorners, markGeometry, markShape } from '../survey/mark-shape.ts';
import type { Deps } from './deps.ts';
import { newId } from './new-id.ts';

/** What can be done to marks; each finished mark is one command of the book. */
export interface MarkActions {
  /** One tap with a cut of the stencil: a point is there at once, a line or an area gets one more corner. */
  tap(kind: MarkKind, at: LonLat): void;
  /** Ends the line or area being drawn. */
  finish(): void;
  /** Takes back the last corner. */
  dropCorner(): void;
  /** Takes a mark in hand, null puts it down. */
  take(id: string | null): void;
  /** Puts the mark in hand elsewhere: a point there, a line or an area by as much as its first corner. */
  moveTo(at: LonLat): void;
  edit(id: string, set: Partial<Omit<MarkRecord, 'id'>>, label: string): void;
  remove(id: string): void;
  /** A landing zone near the site. */
  landingZone(at: LonLat): void;
}

export function createMarkActions({ log }: Pick<Deps, 'log'>): MarkActions {
  const set = useTool.setState;
  const siteId = (): string | null => {
    const { subject } = usePlace.getState();
    return subject?.kind === 'site' ? subject.id : null;
  };
  const wordsOf = (id: string): string => {
    const mark = useBook.getState().marks.get(id);
    return mark ? (mark.name ?? mark.kind) : 'mark';
  };

  async function put(kind: MarkKind, corners: readonly LonLat[]): Promise<void> {
    const id = newId('mark');
    const geometry = markGeometry(kind, corners);
    const change = { table: 'marks', id, set: { siteId: siteId(), kind, geometry } } as const;
    if (await log.commit(`Mark ${kind}`, [change])) set({ corners: [], markId: id, said: `${kind} marked` });
  }

  return {
    tap(kind, at) {
      const shape = markShape(kind);
      if (shape === 'point') return void put(kind, [at]);
      const corners = [...useTool.getState().corners, at];
      const more = leastCorners[shape] - corners.length;
      const said =
        more > 0 ? `${kind}: ${more} more ${more === 1 ? 'corner' : 'corners'}` : `${kind}: more corners, or done`;
      set({ corners, said });
    },
    finish() {
      const { tool, corners } = useTool.getState();
      const kind = tool as MarkKind;
      const shape = markShape(kind);
      if (shape === 'point' || corners.length === 0) return;
      if (corners.length < leastCorners[shape]) {
        return set({ said: `A ${shape} takes at least ${leastCorners[shape]} corners; tap the next one.` });
      }
      void put(kind, corners);
    },
    dropCorner: () => set(({ corners }) => ({ corners: corners.slice(0, -1) })),
    take: (markId) => set({ markId, tool: 'look', corners: [], said: null }),
    moveTo(at) {
      const { markId } = useTool.getState();
      const mark = markId === null ? null : useBook.getState().marks.get(markId);
      if (!mark) return;
      set({ tool: 'look', said: `${wordsOf(mark.id)} moved` });
      const geometry = shifted(mark.geometry, at);
      void log.commit(`Move ${wordsOf(mark.id)}`, [{ table: 'marks', id: mark.id, set: { geometry } }]);
    },
    edit: (id, changes, label) => void log.commit(label, [{ table: 'marks', id, set: changes }]),
    remove(id) {
      const label = `Delete ${wordsOf(id)}`;
      set({ markId: null, tool: 'look' });
      void log.commit(label, [{ table: 'marks', id, set: { deleted: true } }]);
    },
    landingZone(at) {
      const id = newId('zone');
      const change = { siteId: siteId(), kind: 'landing zone', name: 'Landing zone', at };
      void log.commit('Mark landing zone', [{ table: 'supportPlaces', id, set: change }]).then((done) => {
        if (done) set({ said: 'landing zone marked' });
      });
    },
  };
}

/** A geometry moved so that its first corner lies at a position. */
function shifted(geometry: MarkRecord['geometry'], { lon, lat }: LonLat): MarkRecord['geometry'] {
  const first = firstCorner(geometry);
  const by = ([x, y]: [number, number]): [number, number] => [
    Number((x + lon - first[0]).toFixed(7)),
    Number((y + lat - first[1]).toFixed(7)),
  ];
  if (geometry.type === 'Point') return { type: 'Point', coordinates: by(geometry.coordinates) };
  if (geometry.type === 'LineString') return { type: 'LineString', coordinates: geometry.coordinates.map(by) };
  return { type: 'Polygon', coordinates: geometry.coordinates.map((ring) => ring.map(by)) };
}

function firstCorner(geometry: MarkRecord['geometry']): [number, number] {
  if (geometry.type === 'Point') return geometry.coordinates;
  return geometry.type === 'LineString' ? geometry.coordinates[0]! : geometry.coordinates[0]![0]!;
}
