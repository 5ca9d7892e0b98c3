import type { MarkKind, MarkRecord, SupportPlaceRecord } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import { type InHand, inHand, shapeOf, thingOf, useBook, usePlace, useTool } from '../state/index.ts';
import { cornersOf, sameShape, withHandleAt, withoutHandle } from '../survey/mark-corners.ts';
import { leastCorners, type MarkGeometry, markGeometry, markShape } from '../survey/mark-shape.ts';
import type { Deps } from './deps.ts';
import { newId } from './new-id.ts';

/** What can be done to marks and to places for those who come; each finished thing is one command of the book. */
export interface MarkActions {
  /** One tap with a cut of the stencil: a point is there at once, a line or an area gets one more corner. */
  tap(kind: MarkKind, at: LonLat): void;
  /** Ends the line or area being drawn. */
  finish(): void;
  /** Takes back the last corner. */
  dropCorner(): void;
  /** Takes a mark or a place in hand, null puts it down. */
  take(id: string | null): void;
  /** Puts what is in hand elsewhere: a point there, a line or an area by as much as its first corner. */
  moveTo(at: LonLat): void;
  /** A handle of what is in hand moves under a finger or a key; the book waits. */
  handleMove(handle: string, at: LonLat): void;
  /** The handle was let go. */
  handlePlace(handle: string, at: LonLat): void;
  /** Takes the handle's corner away; a point goes as a whole. */
  handleDelete(handle: string): void;
  edit(id: string, set: Partial<Omit<MarkRecord, 'id'>>, label: string): void;
  editPlace(id: string, set: Partial<Omit<SupportPlaceRecord, 'id'>>, label: string): void;
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

  async function put(kind: MarkKind, corners: readonly LonLat[]): Promise<void> {
    const id = newId('mark');
    const geometry = markGeometry(kind, corners);
    const change = { table: 'marks', id, set: { siteId: siteId(), kind, geometry } } as const;
    if (await log.commit(`Mark ${kind}`, [change])) set({ corners: [], markId: id, said: `${kind} marked` });
  }

  /** Gives a thing another shape, one command. */
  function reshape(thing: InHand, geometry: MarkGeometry, said: string): void {
    const { table, record, words } = thing;
    const label = `Move ${words}`;
    // What was moved stays drawn until the book has it.
    const done = (): void => set({ moving: null });
    if (table === 'marks') {
      void log.commit(label, [{ table, id: record.id, set: { geometry } }]).then(done);
    } else if (geometry.type === 'Point') {
      const [lon, lat] = geometry.coordinates;
      void log.commit(label, [{ table, id: record.id, set: { at: { lon, lat } } }]).then(done);
    }
    set({ said });
  }

  function remove(id: string): void {
    const thing = thingOf(useBook.getState(), id);
    if (!thing) return;
    set({ markId: null, moving: null, tool: 'look' });
    void log.commit(`Delete ${thing.words}`, [{ table: thing.table, id, set: { deleted: true } }]);
  }

  return {
    tap(kind, at) {
      const shape = markShape(kind);
      if (shape === 'point') return void put(kind, [at]);
      const corners = [...useTool.getState().corners, at];
      const more = leastCorners[shape] - corners.length;
      const said =
        more > 0 ? `${kind}: ${more} more ${more === 1 ? 'corner' : 'corners'}` : `${kind}: more corners, or done`;
      set({ corners, said, markId: null });
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
    take: (markId) => set({ markId, tool: 'look', corners: [], moving: null, said: null }),
    moveTo(at) {
      const thing = inHand();
      if (!thing) return;
      set({ tool: 'look' });
      reshape(thing, shifted(shapeOf(thing), at), `${thing.words} moved`);
    },
    handleMove(handle, at) {
      const thing = inHand();
      if (!thing) return;
      const geometry = shapeOf(thing);
      const corners = withHandleAt(geometry, handle, at);
      set({ moving: geometry.type === 'Polygon' ? [...corners, corners[0]!] : corners });
    },
    handlePlace(handle, at) {
      const thing = inHand();
      if (!thing) return;
      const geometry = shapeOf(thing);
      reshape(thing, sameShape(geometry, withHandleAt(geometry, handle, at)), `${thing.words} moved`);
    },
    handleDelete(handle) {
      const thing = inHand();
      if (!thing) return;
      const geometry = shapeOf(thing);
      if (geometry.type === 'Point') return remove(thing.record.id);
      const corners = withoutHandle(geometry, handle);
      if (corners) reshape(thing, sameShape(geometry, corners), 'Corner taken away');
      else set({ said: `The ${thing.words} needs its ${cornersOf(geometry).length} corners; delete it as a whole.` });
    },
    edit: (id, changes, label) => void log.commit(label, [{ table: 'marks', id, set: changes }]),
    editPlace: (id, changes, label) => void log.commit(label, [{ table: 'supportPlaces', id, set: changes }]),
    remove,
    landingZone(at) {
      const id = newId('zone');
      const change = { siteId: siteId(), kind: 'landing zone', name: 'Landing zone', at };
      void log.commit('Mark landing zone', [{ table: 'supportPlaces', id, set: change }]).then((done) => {
        if (done)
          set({ tool: 'look', markId: id, said: 'Landing zone marked. Now its size and what is dangerous there.' });
      });
    },
  };
}

/** A geometry moved so that its first corner lies at a position. */
function shifted(geometry: MarkGeometry, { lon, lat }: LonLat): MarkGeometry {
  const corners = cornersOf(geometry);
  const first = corners[0]!;
  const east = lon - first.lon;
  const north = lat - first.lat;
  const by = ({ lon: x, lat: y }: LonLat): LonLat => ({ lon: x + east, lat: y + north });
  if (geometry.type !== 'Polygon') return sameShape(geometry, corners.map(by));
  const coordinates = geometry.coordinates.map((ring) =>
    ring.map(([x, y]): [number, number] => [Number((x + east).toFixed(7)), Number((y + north).toFixed(7))]),
  );
  return { type: 'Polygon', coordinates };
}
