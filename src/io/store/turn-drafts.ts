import { type Inversion, invert, type MergeState, neededToInvert, updateId } from '../../book/merge/index.ts';
import type { BookDisk } from './book-disk.ts';
import type { Editor } from './edit-types.ts';
import { plainLabel } from './undo-record.ts';

/** What takes back, or brings back, a group of updates of the log, by their ids. */
export async function turnDrafts(
  disk: BookDisk,
  state: MergeState,
  ids: readonly string[],
  as: 'undoes' | 'redoes',
  editor: Editor,
): Promise<Inversion> {
  const group = await disk.readLog(ids);
  const earlier = await disk.readLog(neededToInvert(group));
  const label = `${as === 'undoes' ? 'Undo' : 'Redo'}: ${plainLabel(group[0]!.label)}`.slice(0, 200);
  const found = new Map(earlier.map((update) => [updateId(update), update]));
  return invert(state, group, found, as, { ...editor, label });
}
