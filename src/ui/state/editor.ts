import { create } from 'zustand';
import type { Editor } from '../../io/store/index.ts';
import { useBook } from './book.ts';

const KEY = 'brinkbook-editor';

/** Who writes in the book on this device: a name and a word, no account. Remembered on this device. */
export const useEditor = create<Editor>()(() => remembered());

/** Says who writes from now on; what was written before keeps its name. */
export function setEditor(editor: Editor): void {
  useEditor.setState(editor);
  const { opened } = useBook.getState();
  if (opened) opened.editor = editor;
  try {
    localStorage.setItem(KEY, JSON.stringify(editor));
  } catch {
    // No storage: it holds for this visit.
  }
}

function remembered(): Editor {
  const nobody = { who: 'this desk', device: 'this page' };
  try {
    const { who, device } = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Editor>;
    return {
      who: typeof who === 'string' ? who : nobody.who,
      device: typeof device === 'string' ? device : nobody.device,
    };
  } catch {
    return nobody;
  }
}
