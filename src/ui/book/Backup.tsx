import { useState } from 'react';
import type { CopyState } from '../../io/store/index.ts';
import { giveFile } from '../give-file.ts';
import { sentenceOf } from '../sentence-of.ts';
import { useBook } from '../state/index.ts';
import { fileName, wholeBook } from './give-out.ts';
import { useWholeBook } from './use-whole-book.ts';

type Held = readonly (readonly [string, number])[];

/** How the last copy off the device stands, and one tap that writes a whole one. A person says when it is elsewhere. */
export function Backup() {
  const opened = useBook((state) => state.opened);
  const book = useWholeBook();
  const [made, setMade] = useState<{ readonly name: string; readonly held: Held } | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  if (!opened || !book) return null;
  const write = async (): Promise<void> => {
    setSaid('Writing the book.');
    try {
      const { bytes, held } = await wholeBook(opened, { crashes: true, patientPhotos: true });
      const name = fileName(book, 'brinkbook.zip');
      giveFile(name, bytes, 'application/zip');
      setMade({ name, held });
      setSaid(null);
    } catch (error) {
      setSaid(`${sentenceOf(error)} No copy was written.`);
    }
  };
  return (
    <>
      <p>{copyWords(opened.copyState())}</p>
      <button type="button" className="key" onClick={() => void write()}>
        Write a whole copy
      </button>
      {made && (
        <p role="status">
          {made.name} is among this device’s downloads, with crash points and all photos in it. Carry it to another
          device, then{' '}
          <button
            type="button"
            className="key"
            onClick={() => void opened.noteCopyLeft(made.held).then(() => setMade(null))}
          >
            it is elsewhere now
          </button>
        </p>
      )}
      {said && <p role="status">{said}</p>}
    </>
  );
}

/** How the last copy stands, as a sentence. */
export function copyWords({ state, changes, days }: CopyState): string {
  const edits = changes === 1 ? '1 edit is' : `${changes} edits are`;
  const ago = days === 0 ? 'today' : days === 1 ? 'a day ago' : `${days} days ago`;
  if (state === 'empty') return 'Nothing to lose yet.';
  if (state === 'none') return `No copy of this book is off this device: ${edits} here alone.`;
  if (state === 'current') return `A copy with every edit left this device ${ago}.`;
  return `The last copy left this device ${ago}; since then ${edits} here alone.`;
}
