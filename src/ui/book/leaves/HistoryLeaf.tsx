import { Fragment, useEffect, useState } from 'react';
import type { TableName } from '../../../book/index.ts';
import type { Update } from '../../../book/merge/index.ts';
import { useActions } from '../../desk-context.ts';
import { useBook } from '../../state/index.ts';
import { dayTime } from '../day-time.ts';
import { deletedOf, nameOf } from '../value-words.ts';
import type { LeafProps } from './leaf-props.ts';

/** How many of the records of an edit are named. */
const NAMED = 3;
/** How many edits are shown at a time. */
const STEP = 100;

/** Who did what when, newest first, what undo would take back, and what was deleted. */
export function HistoryLeaf({ book }: LeafProps) {
  const { desk } = useActions();
  const { opened, undo, redo } = useBook();
  const [log, setLog] = useState<readonly Update[] | null>(null);
  const [shown, setShown] = useState(STEP);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change of the book is a change of its log.
  useEffect(() => {
    let gone = false;
    void opened?.updates().then((all) => {
      if (!gone) setLog([...all].sort((a, b) => b.t[0] - a.t[0] || b.t[1] - a.t[1]));
    });
    return () => {
      gone = true;
    };
  }, [opened, book]);
  const deleted = deletedOf(book);
  return (
    <div className="leaf-columns aside">
      <section>
        <div className="form-keys">
          <button type="button" className="key" disabled={undo === null} onClick={() => void desk.undo()}>
            undo{undo === null ? '' : `: ${undo}`}
          </button>
          <button type="button" className="key" disabled={redo === null} onClick={() => void desk.redo()}>
            redo{redo === null ? '' : `: ${redo}`}
          </button>
        </div>
        <h3>Deleted, to be brought back</h3>
        {deleted.length === 0 && <p className="note">Nothing is deleted.</p>}
        <ul className="ledger" aria-label="Deleted">
          {deleted.map(({ table, id, words }) => (
            <li key={`${table} ${id}`} className="line-row">
              <span>{words}</span>
              <button
                type="button"
                className="strike"
                onClick={() => void desk.edit(`Bring back ${words}`, [{ table, id, set: { deleted: false } }])}
              >
                bring back
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h3>History</h3>
        {log === null && <p role="status">Reading the history.</p>}
        <ol className="ledger" aria-label="History">
          {(log ?? []).slice(0, shown).map((update) => (
            <li key={`${update.actor} ${update.n}`} className="line-row">
              <span>
                {update.label}
                <Touched names={[...new Set(touched(update).map(([table, id]) => nameOf(book, table, id)))]} />
              </span>
              <span className="note num">
                {update.who}, {update.device}, {dayTime(update.t[0])}
              </span>
            </li>
          ))}
        </ol>
        {log !== null && log.length > shown && (
          <button type="button" className="key-quiet" onClick={() => setShown(shown + STEP)}>
            older, {log.length - shown} more
          </button>
        )}
      </section>
    </div>
  );
}

/** The records that an update changed, each once. */
function touched({ ops }: Update): [table: TableName, id: string][] {
  const found = new Map<string, [TableName, string]>();
  for (const [table, id] of ops) found.set(`${table} ${id}`, [table as TableName, id]);
  return [...found.values()];
}

/** The records of an edit by name, each kept on one line where it fits: a date is not torn apart. */
function Touched({ names }: { readonly names: readonly string[] }) {
  const named = names.slice(0, NAMED);
  const more = names.length - named.length;
  return (
    <span className="note">
      {named.map((name, i) => (
        <Fragment key={name}>
          {' '}
          <span className="touched">
            {name}
            {i + 1 < named.length && ','}
          </span>
        </Fragment>
      ))}
      {more > 0 && ` and ${more} more`}
    </span>
  );
}
