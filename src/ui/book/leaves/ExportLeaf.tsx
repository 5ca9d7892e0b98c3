import { lazy, Suspense, useState } from 'react';
import { live } from '../../../book/index.ts';
import { writeNeighbour } from '../../../io/index.ts';
import { giveFile } from '../../give-file.ts';
import { sentenceOf } from '../../sentence-of.ts';
import { useBook, useReading } from '../../state/index.ts';
import { fileName, formats, wholeBook } from '../give-out.ts';
import type { LeafProps } from './leaf-props.ts';

const SheetBook = lazy(async () => ({ default: (await import('../../share/SheetBook.tsx')).SheetBook }));

/** The book in open formats, as a neighbour's page, and whole. What shows people or crashes goes out only when asked for. */
export function ExportLeaf({ book }: LeafProps) {
  const opened = useBook((state) => state.opened);
  const units = useReading((state) => state.units);
  const [crashes, setCrashes] = useState(false);
  const [patientPhotos, setPatientPhotos] = useState(false);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [said, setSaid] = useState<string | null>(null);
  const sites = live(book, 'sites').sort((a, b) => a.name.localeCompare(b.name, 'en'));
  const some = chosen.size > 0 ? [...chosen] : null;
  const made = (name: string, more = ''): void => setSaid(`${name} is among this device’s downloads.${more}`);
  const attempt = async (work: () => Promise<void>): Promise<void> => {
    setSaid('Writing the file.');
    try {
      await work();
    } catch (error) {
      setSaid(`${sentenceOf(error)} No file was written.`);
    }
  };
  const neighbour = (): Promise<void> =>
    attempt(async () => {
      const photo = async (hash: string): Promise<Uint8Array | null> => {
        const blob = await opened?.photo(hash);
        return blob ? new Uint8Array(await blob.arrayBuffer()) : null;
      };
      const name = fileName(book, 'html');
      giveFile(name, await writeNeighbour(book, { sites: some, patientPhotos, units, photo }), 'text/html');
      made(name, ' It opens without this program and without a network.');
    });
  const whole = (content: 'whole' | 'reading copy'): Promise<void> =>
    attempt(async () => {
      if (!opened) return;
      const { bytes } = await wholeBook(opened, { crashes, patientPhotos }, content);
      const name = fileName(book, content === 'whole' ? 'brinkbook.zip' : 'reading-copy.brinkbook.zip');
      giveFile(name, bytes, 'application/zip');
      made(name, crashes && patientPhotos ? '' : ' It is no backup: what was not asked for is left out.');
    });
  return (
    <div className="leaf-columns aside">
      <section>
        <fieldset className="some-of">
          <legend>Leaves only when asked for</legend>
          <label className="tick">
            <input type="checkbox" checked={crashes} onChange={(event) => setCrashes(event.target.checked)} /> crash
            points ({live(book, 'crashes').length})
          </label>
          <label className="tick">
            <input
              type="checkbox"
              checked={patientPhotos}
              onChange={(event) => setPatientPhotos(event.target.checked)}
            />{' '}
            photos that show a patient ({live(book, 'photos').filter(({ showsPatient }) => showsPatient).length})
          </label>
          <p className="note">
            With the whole book’s history go the words of such a photo (what it shows, day, place if kept), never the
            picture.
          </p>
        </fieldset>
        <details className="site-choice">
          <summary>{some ? `${some.length} chosen sites` : `All ${sites.length} sites`}</summary>
          {sites.map(({ id, name }) => (
            <label key={id} className="tick">
              <input
                type="checkbox"
                checked={chosen.has(id)}
                onChange={(event) => {
                  const next = new Set(chosen);
                  if (event.target.checked) next.add(id);
                  else next.delete(id);
                  setChosen(next);
                }}
              />{' '}
              {name}
            </label>
          ))}
        </details>
      </section>
      <section>
        <ul className="ledger">
          {formats.map(({ name, ending, type, write }) => (
            <li key={name} className="line-row">
              <span>{name}</span>
              <button
                type="button"
                className="key"
                onClick={() =>
                  void attempt(async () => {
                    const as = fileName(book, ending);
                    giveFile(as, write(book, { sites: some, crashes }), type);
                    made(as);
                  })
                }
              >
                Write {name}
              </button>
            </li>
          ))}
          <li className="line-row">
            <Suspense fallback={null}>
              <SheetBook sites={sites.filter(({ id }) => some === null || chosen.has(id))} />
            </Suspense>
          </li>
          <li className="line-row">
            <span>A neighbour’s page: sites, marks, photos, readable without the program</span>
            <button type="button" className="key" onClick={() => void neighbour()}>
              Write the page
            </button>
          </li>
          <li className="line-row">
            <span>The whole book with its history and photos, to be joined with another</span>
            <button type="button" className="key" onClick={() => void whole('whole')}>
              Write the book
            </button>
          </li>
          <li className="line-row">
            <span>A reading copy: the book as it stands, without history</span>
            <button type="button" className="key" onClick={() => void whole('reading copy')}>
              Write the copy
            </button>
          </li>
        </ul>
        <p role="status">{said}</p>
      </section>
    </div>
  );
}
