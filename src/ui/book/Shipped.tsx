import { useActions } from '../desk-context.ts';
import { isShipped, type ShippedPart, shippedAsOwn } from './make-own.ts';
import { useWholeBook } from './use-whole-book.ts';

/** Says that a part is the shipped one, and makes it the district's own on a tap; nothing once it is. */
export function Shipped({ part, words }: { readonly part: ShippedPart; readonly words: string }) {
  const { desk } = useActions();
  const book = useWholeBook();
  if (!book || !isShipped(book, part)) return null;
  return (
    <p className="shipped">
      <i className="assumed">
        {words} What the district’s files say is used, else shipped figures: assumed, common practice, no source.
      </i>{' '}
      <button
        type="button"
        className="key"
        onClick={() => void desk.edit(`Take the shipped ${part} as our own`, shippedAsOwn(part))}
      >
        write them in, to correct them
      </button>
    </p>
  );
}
