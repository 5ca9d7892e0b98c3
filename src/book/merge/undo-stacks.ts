import { type Update, updateId } from './update.ts';

/** Ids of this device's updates that can be taken back, and of those that can be brought back; the last goes first. */
export interface UndoStacks {
  readonly undo: string[][];
  readonly redo: string[][];
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
    undo.push([updateId(update)]);
    redo.length = 0;
  }
}

/** Moves the group that begins with `target` from one stack to the other, where the update stands for it from now on. */
function move(from: string[][], to: string[][], update: Entry, target: string): void {
  const at = from.findLastIndex(([first]) => first === target);
  if (at >= 0) {
    from.splice(at, 1);
    to.push([updateId(update)]);
  } else {
    // A choice that is opened again takes several updates: they go together.
    to.at(-1)?.push(updateId(update));
  }
}
