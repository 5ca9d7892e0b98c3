import { useState } from 'react';
import { live } from '../../../book/index.ts';
import type { BookFileRead } from '../../../workers/index.ts';
import { useActions } from '../../desk-context.ts';
import { sentenceOf } from '../../sentence-of.ts';
import { useBook } from '../../state/index.ts';

/** What another book would bring: it is joined edit by edit, nothing of this one is lost, and what differs is shown for a decision. */
export function MergeFound({ name, read, onEnd }: Props) {
  const { desk } = useActions();
  const opened = useBook((state) => state.opened);
  const [why, setWhy] = useState<string | null>(null);
  const [working, setWorking] = useState(false);
  const [allTheSame, setAllTheSame] = useState(false);
  const { book, updates, photos } = read;
  const held = new Map(opened?.heads() ?? []);
  const fresh = (updates ?? []).filter(({ actor, n }) => n > (held.get(actor) ?? 0));
  const strange = held.size > 0 && fresh.length > 0 && !(updates ?? []).some(({ actor }) => held.has(actor));
  const people = [...new Set(fresh.map(({ who, device }) => `${who}, ${device}`))];
  const merge = async (): Promise<void> => {
    if (!opened || !updates) return;
    setWorking(true);
    try {
      const { added, newer } = await opened.receive(updates, name, photos);
      const open = opened.book().contested.length;
      const wait = newer === 0 ? '' : ` ${newer} wait for a newer program.`;
      onEnd(
        `${added} edits joined from ${name}.${wait} ${open === 0 ? 'Nothing to decide.' : `${open} to decide: see “To decide”.`}`,
      );
      if (open > 0) desk.navigate.go({ screen: 'book', leaf: 'conflicts' });
    } catch (error) {
      setWhy(`${sentenceOf(error)} The book is as it was.`);
    }
    setWorking(false);
  };
  return (
    <section aria-label={`What ${name} would add`}>
      <h3>
        {name}: the book of {book.tables.settings[0]?.district || 'a district without a name'},{' '}
        {live(book, 'sites').length} sites, {live(book, 'marks').length} marks, {photos.size} photos
      </h3>
      {updates === null ? (
        <p className="field-why">
          This is a reading copy without the history of its edits, so it cannot be joined; ask for a whole book file.
        </p>
      ) : (
        <p>
          {fresh.length === 0
            ? 'This book already holds every edit of it.'
            : `${fresh.length} of its ${updates.length} edits are new here, by ${people.slice(0, 5).join('; ')}.`}
        </p>
      )}
      {strange && (
        <>
          <p className="field-why">
            The two books have no edit in common: they may be of different districts. Once joined they cannot be taken
            apart; write a copy of this one first.
          </p>
          <label className="tick">
            <input type="checkbox" checked={allTheSame} onChange={(event) => setAllTheSame(event.target.checked)} />{' '}
            join them all the same
          </label>
        </>
      )}
      {why && (
        <p className="field-why" role="alert">
          {why}
        </p>
      )}
      <div className="form-keys">
        <button
          type="button"
          className="key"
          disabled={fresh.length === 0 || working || (strange && !allTheSame)}
          onClick={() => void merge()}
        >
          {working ? 'joining' : 'Join it with this book'}
        </button>
        <button type="button" className="key-quiet" onClick={() => onEnd(null)}>
          leave it
        </button>
      </div>
    </section>
  );
}

interface Props {
  readonly name: string;
  readonly read: BookFileRead;
  onEnd(words: string | null): void;
}
