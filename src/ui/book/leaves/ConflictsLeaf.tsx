import type { Contested } from '../../../book/index.ts';
import { useActions } from '../../desk-context.ts';
import { dayTime } from '../day-time.ts';
import { fieldWords, nameOf, valueWords } from '../value-words.ts';
import type { LeafProps } from './leaf-props.ts';

/** Values that people gave without knowing of each other: all are kept and shown until somebody decides. */
export function ConflictsLeaf({ book }: LeafProps) {
  if (book.contested.length === 0) {
    return <p>Nothing to decide. Where two people write different values of one field, both are shown here.</p>;
  }
  return (
    <>
      <p className="note">Until one is chosen the first of each counts and the site’s sheet says “check”.</p>
      <ul className="ledger">
        {book.contested.map((one) => (
          <Conflict key={`${one.table} ${one.id} ${one.field}`} book={book} conflict={one} />
        ))}
      </ul>
    </>
  );
}

function Conflict({ book, conflict }: LeafProps & { readonly conflict: Contested }) {
  const { desk } = useActions();
  const { table, id, field, values } = conflict;
  const what = `${fieldWords(field)} of ${nameOf(book, table, id)}`;
  return (
    <li className="conflict" aria-label={what}>
      <h3>{what}</h3>
      <ul>
        {values.map(({ value, who, device, atMs }) => (
          <li key={`${who} ${device} ${atMs}`}>
            <button
              type="button"
              className="key"
              onClick={() => void desk.edit(`Decide ${what}`, [{ table, id, set: { [field]: value } }])}
            >
              {valueWords(field, value)}
            </button>
            <span className="note">
              {who}, {device}, {dayTime(atMs)}
            </span>
          </li>
        ))}
      </ul>
    </li>
  );
}
