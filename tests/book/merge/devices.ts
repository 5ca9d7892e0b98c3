import {
  applyUpdate,
  type Change,
  composeDraft,
  type Draft,
  emptyState,
  finish,
  invert,
  type MergeState,
  neededToInvert,
  nextTime,
  noteForUndo,
  snapshotOf,
  type Time,
  type UndoStacks,
  type Update,
  updateId,
} from '../../../src/book/merge/index.ts';

/** A device that edits offline: its state, all updates it holds, a clock that may be wrong. */
export class Device {
  readonly actor: string;
  readonly state: MergeState = emptyState();
  readonly log = new Map<string, Update>();
  readonly stacks: UndoStacks = { undo: [], redo: [] };
  private n = 0;
  private last: Time = [0, 0];
  constructor(actor: string) {
    this.actor = actor;
  }

  edit(changes: readonly Change[], wallMs = 0, label = 'edit'): Update | null {
    const draft = composeDraft(this.state, changes, { who: `Officer ${this.actor}`, device: this.actor, label });
    return draft && this.keep(draft, wallMs);
  }

  /** Takes back, or brings back, the last group; what stayed as it was. */
  turn(way: 'undoes' | 'redoes', wallMs = 0) {
    const group = (way === 'undoes' ? this.stacks.undo : this.stacks.redo).at(-1)?.ids.map((id) => this.log.get(id)!);
    if (!group) return null;
    const earlier = new Map(neededToInvert(group).map((id) => [id, this.log.get(id)!]));
    const author = { who: `Officer ${this.actor}`, device: this.actor, label: way };
    const { drafts, kept } = invert(this.state, group, earlier, way, author);
    return { updates: drafts.map((draft) => this.keep(draft, wallMs)), kept };
  }

  receive(updates: Iterable<Update>): void {
    for (const update of updates) {
      applyUpdate(this.state, update, 'a file');
      this.log.set(updateId(update), update);
    }
  }

  private keep(draft: Draft, wallMs: number): Update {
    this.n += 1;
    this.last = nextTime(this.last, wallMs);
    const update = finish(draft, this.actor, this.n, this.last);
    this.receive([update]);
    noteForUndo(this.stacks, update);
    return update;
  }
}

export const place = { lon: -128, lat: 44, sideAzimuthDeg: 90 };
export const site = (id: string, set: Record<string, unknown> = {}) => ({
  table: 'sites' as const,
  id,
  set: { name: 'Bend', place, ...set },
});
export const rename = (id: string, name: string) => ({ table: 'sites' as const, id, set: { name } });
export const remove = (id: string) => ({ table: 'sites' as const, id, set: { deleted: true } });
export const sitesOf = (device: Device) => snapshotOf(device.state).tables.sites;
export const contestedOf = (device: Device) => snapshotOf(device.state).contested;

/** Two devices that hold one site. */
export function pair(): [Device, Device] {
  const [a, b] = [new Device('a'), new Device('b')];
  a.edit([site('s')], 1000);
  b.receive(a.log.values());
  return [a, b];
}
export const exchange = (a: Device, b: Device): void => {
  b.receive([...a.log.values()]);
  a.receive([...b.log.values()]);
};
