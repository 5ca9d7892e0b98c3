import { noteForUndo, type UndoStacks, type Update, undoStacks } from '../../book/merge/index.ts';
import type { BookDisk, Meta } from './book-disk.ts';

/** What was done, without the word for having been turned. */
export const plainLabel = (label: string | undefined): string | undefined => label?.replace(/^(Undo|Redo): /, '');

/** How far back undo reaches, in updates of this device. */
const REACH = 1000;

/** The undo stacks of this device, read from its log when first asked for. */
export class UndoRecord {
  private readonly disk: BookDisk;
  private stacks: UndoStacks | null = null;
  constructor(disk: BookDisk) {
    this.disk = disk;
  }

  /** Ids of the group that goes next, or null. */
  async next(meta: Meta, as: 'undoes' | 'redoes'): Promise<readonly string[] | null> {
    const stacks = await this.read(meta);
    return (as === 'undoes' ? stacks.undo : stacks.redo).at(-1)?.ids ?? null;
  }

  /** Labels of the groups that go next. */
  async labels(meta: Meta): Promise<{ undo: string | null; redo: string | null }> {
    const { undo, redo } = await this.read(meta);
    const label = async (id: string | undefined): Promise<string | null> =>
      id === undefined ? null : (plainLabel((await this.disk.readLog([id]))[0]?.label) ?? null);
    return { undo: await label(undo.at(-1)?.ids[0]), redo: await label(redo.at(-1)?.ids[0]) };
  }

  /** Takes in updates that this tab has just kept. */
  note(updates: readonly Update[]): void {
    for (const update of updates) if (this.stacks) noteForUndo(this.stacks, update);
  }

  /** Another tab wrote, or the device has a new name: read anew when asked. */
  forget(): void {
    this.stacks = null;
  }

  private async read({ actor, next }: Meta): Promise<UndoStacks> {
    this.stacks ??= undoStacks(await this.disk.readLogFrom(actor, Math.max(1, next - REACH)));
    return this.stacks;
  }
}
