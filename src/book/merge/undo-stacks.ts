import { type Update, updateId } from './update.ts';

/** Updates that are taken back together, and which update's effect they turned, if any. */
export interface UndoGroup {
  readonly ids: string[];
  readonly target: string | null;
}

/** This device's updates that can be taken back, and those that can be brought back; the last goes first. */
export interface UndoStacks {
  readonly undo: UndoGroup[];
  readonly redo: UndoGroup[];
}

type Entry = Pick<Update, 'actor' | 'n' | 'undoes' | 'redoes'>;

/** The stacks as this device's own updates left them, in the order of their numbers: they outlive a restart. */
export function undoStacks(own: Iterable<Entry>): UndoStacks {
  const stacks: UndoStacks = { undo: [], redo: [] };
  for (const update of own) noteForUndo(stacks, update);
  return stacks;
}

/** Takes this device's next update into its stacks. */
export function noteForUndo(stacks: UndoStacks, update: Entry): void {
  const { undo, redo } = stacks;
  if (update.undoes !== undefined) move(undo, redo, update, update.undoes);
  else if (update.redoes !== undefined) move(redo, undo, update, update.redoes);
  else {
    undo.push({ ids: [updateId(update)], target: null });
    redo.length = 0;
  }
}

/** Moves the group that begins with `target` from one stack to the other, where the update stands for it from now on. */
function move(from: UndoGroup[], to: UndoGroup[], update: Entry, target: string): void {
  const at = from.findLastIndex(({ ids }) => ids[0] === target);
  const top = to.at(-1);
  // A choice that is opened again takes several updates with one target: they go together.
  if (at < 0 && top?.target === target) {
    top.ids.push(updateId(update));
    return;
  }
  if (at >= 0) from.splice(at, 1);
  to.push({ ids: [updateId(update)], target });
}
