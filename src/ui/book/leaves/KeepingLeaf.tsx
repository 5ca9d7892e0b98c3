import { useEffect, useState } from 'react';
import { looseEnds } from '../../../book/index.ts';
import { askToPersist, type StorageState, storageState } from '../../../io/web/store/index.ts';
import { setEditor, useBook, useEditor } from '../../state/index.ts';
import { Field } from '../../survey/Field.tsx';
import { Backup } from '../Backup.tsx';
import type { LeafProps } from './leaf-props.ts';

const secondWords = {
  none: 'This browser has no place for a second copy of the book on this device; keep one elsewhere.',
  behind:
    'The second copy on this device lacks the last edits: the device refused them. It is tried again with the next edit, and when the page is loaded again.',
  current: 'A second copy on this device holds every edit.',
} as const;

/** Who writes here, where the book is kept, whether a copy is elsewhere, and what in it points at nothing. */
export function KeepingLeaf({ book }: LeafProps) {
  const { who, device } = useEditor();
  const { opened, sites, fleeting, secondCopy } = useBook();
  const [storage, setStorage] = useState<StorageState | null>(null);
  useEffect(() => {
    void storageState().then(setStorage);
  }, []);
  const ask = async (): Promise<void> => {
    const given = await askToPersist();
    setStorage({ ...(await storageState()), persisted: given });
  };
  const ends = looseEnds(book);
  return (
    <div className="leaf-columns">
      <section>
        <h3>Who writes on this device</h3>
        <div className="field-pair">
          <Field
            label="Name"
            value={who}
            onEdit={(typed) => typed.trim() && setEditor({ who: typed.trim().slice(0, 200), device })}
          />
          <Field
            label="Device"
            value={device}
            onEdit={(typed) => typed.trim() && setEditor({ who, device: typed.trim().slice(0, 200) })}
          />
        </div>
        <p className="note">It stands beside every edit in the history. There are no accounts.</p>
      </section>
      <section>
        <h3>A copy elsewhere</h3>
        <Backup />
      </section>
      <section>
        <h3>On this device</h3>
        {fleeting && (
          <p className="field-why">
            This browser keeps nothing: the book lasts until the page is closed. Write it out first.
          </p>
        )}
        {storage && (
          <p>
            {storage.persisted === true
              ? 'The browser promises not to clear the book by itself.'
              : 'The browser may clear the book by itself when the device runs full.'}
            {storage.usedBytes !== null && ` Brinkbook uses ${(storage.usedBytes / 1e6).toFixed(1)} MB.`}
          </p>
        )}
        {storage?.persisted !== true && sites.size > 0 && (
          <button type="button" className="key" onClick={() => void ask()}>
            ask the browser to keep it
          </button>
        )}
        {!fleeting && <p className={secondCopy === 'current' ? undefined : 'field-why'}>{secondWords[secondCopy]}</p>}
        {opened && opened.recovered > 0 && (
          <p>{opened.recovered} edits were lost by the browser’s database and came back from the second copy.</p>
        )}
        {opened && opened.newer > 0 && (
          <p className="field-why">{opened.newer} edits wait for a newer program; update it.</p>
        )}
      </section>
      {ends.length > 0 && (
        <section>
          <h3>Loose ends</h3>
          <ul className="ledger">
            {ends.slice(0, 100).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
