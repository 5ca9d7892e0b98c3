import { useEffect, useState } from 'react';
import type { LonLat } from '../../geo/index.ts';
import { useActions } from '../desk-context.ts';

/** Reads a text as a position in any usual form, and offers to go there. */
export function PositionFind({ text }: { readonly text: string }) {
  const { desk } = useActions();
  const [found, setFound] = useState<{ at: LonLat | null; words: string } | null>(null);
  useEffect(() => {
    let gone = false;
    setFound(null);
    if (/\d/.test(text)) {
      void import('../../geo/coordinate-text/index.ts').then(({ parsePosition }) => {
        if (gone) return;
        const read = parsePosition(text, {});
        setFound(
          read.ok
            ? { at: read.value.position, words: read.value.question?.sentence ?? '' }
            : { at: null, words: read.error.message },
        );
      });
    }
    return () => {
      gone = true;
    };
  }, [text]);
  if (!found) return <>Search for another word, or show all.</>;
  const { at, words } = found;
  if (!at) return <>{words}</>;
  return (
    <>
      {words}{' '}
      <button type="button" className="key-quiet" onClick={() => desk.show({ kind: 'point', at, side: null })}>
        Go to {at.lat.toFixed(5)}, {at.lon.toFixed(5)}
      </button>
    </>
  );
}
