import { useEffect, useRef } from 'react';
import { useActions } from '../desk-context.ts';
import { Head } from '../notes/Head.tsx';
import { Caution } from '../notes/Provenance.tsx';
import { useDistrict, usePlace } from '../state/index.ts';
import { Contents } from './Contents.tsx';
import { leafOf } from './leaves/index.ts';
import { leafNamed, leaves } from './leaves.ts';
import { useWholeBook } from './use-whole-book.ts';

/** The book: contents on the left page, one ruled ledger on the right. */
export function BookScreen({ light }: { readonly light: 'day' | 'night' }) {
  const { desk } = useActions();
  const { screen, leaf } = usePlace();
  const opening = useDistrict((state) => state.opening);
  const book = useWholeBook();
  const name = leafNamed(leaf);
  const Leaf = leafOf[name];
  const title = useRef<HTMLHeadingElement>(null);
  const before = useRef(name);
  // A leaf that was turned to is read from its top; the first one leaves the page's focus alone.
  useEffect(() => {
    if (before.current !== name) title.current?.focus();
    before.current = name;
  }, [name]);
  return (
    <>
      <article className="notes book-notes">
        <div className="notes-scroll">
          <Head light={light} />
          {book && <Contents book={book} current={name} onTurn={(to) => desk.navigate.go({ screen, leaf: to })} />}
          <Caution />
        </div>
      </article>
      <section className="ledger-pane" aria-labelledby="leaf-title">
        <h1 id="leaf-title" ref={title} tabIndex={-1}>
          {leaves.find((one) => one.name === name)!.words}
        </h1>
        {book ? <Leaf book={book} /> : <p role="status">{opening ?? 'Opening the book.'}</p>}
      </section>
    </>
  );
}
