import { useState, useSyncExternalStore } from 'react';
import { type Book, live } from '../../book/index.ts';
import { writeAddress } from '../address.ts';
import { PersistAsk } from '../notes/PersistAsk.tsx';
import { useBook, usePlace } from '../state/index.ts';
import { copyWords } from './Backup.tsx';
import { type LeafName, leaves } from './leaves.ts';
import { StorageLine } from './StorageLine.tsx';
import { deletedOf } from './value-words.ts';

/** The contents: what each leaf holds, what waits, and whether the book is kept. */
export function Contents({ book, current, onTurn }: Props) {
  const place = usePlace();
  const { opened, remind } = useBook();
  const [later, setLater] = useState(false);
  const counts = countsOf(book);
  const isWide = useWide();
  const copy = opened?.copyState();
  const groups = [...new Set(leaves.map(({ group }) => group))];
  return (
    <>
      <StorageLine />
      <PersistAsk />
      {copy && remind && !later && (
        <p className="remind">
          {copyWords(copy)}{' '}
          <button type="button" className="key" onClick={() => onTurn('keeping')}>
            Write a copy
          </button>
          <button type="button" className="key-quiet" onClick={() => setLater(true)}>
            later
          </button>
        </p>
      )}
      <details className="contents-fold" open={isWide || place.leaf === undefined}>
        <summary>Contents</summary>
        <nav className="contents" aria-label="Contents of the book">
          {groups.map((group) => (
            <section key={group}>
              <h2>{group}</h2>
              <ul>
                {leaves
                  .filter((leaf) => leaf.group === group)
                  .map(({ name, words }) => (
                    <li key={name}>
                      <a
                        href={writeAddress({ ...place, screen: 'book', leaf: name })}
                        aria-current={name === current ? 'page' : undefined}
                        onClick={(event) => {
                          event.preventDefault();
                          onTurn(name);
                        }}
                      >
                        <span>{words}</span>
                        <span className={name === 'conflicts' && book.contested.length > 0 ? 'num accent' : 'num'}>
                          {counts[name]}
                        </span>
                      </a>
                    </li>
                  ))}
              </ul>
            </section>
          ))}
        </nav>
      </details>
    </>
  );
}

/** True where contents and leaf stand side by side or have room; a phone folds the contents once a leaf was turned to. */
function useWide(): boolean {
  const query = '(min-width: 700px)';
  return useSyncExternalStore(
    (changed) => {
      const list = matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    () => matchMedia(query).matches,
  );
}

function countsOf(book: Book): Partial<Record<LeafName, string>> {
  const many = (table: Parameters<typeof live>[1]): string => String(live(book, table).length || 'not written');
  const some = (table: Parameters<typeof live>[1]): string => String(live(book, table).length || '');
  return {
    kit: many('kits'),
    fleet: many('fleet'),
    stations: some('stations'),
    response: many('responseRows'),
    rules: some('rates'),
    card: some('cardLines'),
    markers: some('routes'),
    events: some('events'),
    photos: some('photos'),
    conflicts: String(book.contested.length || ''),
    history: String(deletedOf(book).length || ''),
  };
}

interface Props {
  readonly book: Book;
  readonly current: LeafName;
  onTurn(to: LeafName): void;
}
