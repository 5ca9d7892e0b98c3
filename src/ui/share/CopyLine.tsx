import { useEffect, useRef, useState } from 'react';

/** How long a key says that it has copied, milliseconds. */
const SAID_MS = 2500;

/** A text with a key that copies it; where the browser does not let it, the text stands marked to be copied by hand. */
export function CopyLine({ what, words }: { readonly what: string; readonly words: string | null }) {
  const [said, setSaid] = useState<string | null>(null);
  const text = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (said === null) return;
    const timer = setTimeout(() => setSaid(null), SAID_MS);
    return () => clearTimeout(timer);
  }, [said]);
  if (words === null) return null;
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(words);
      setSaid('copied');
    } catch {
      if (text.current) getSelection()?.selectAllChildren(text.current);
      setSaid('marked: copy it');
    }
  };
  return (
    <p className="copy-line">
      <span className="note">{what}</span>
      <span className="num copy-text" ref={text}>
        {words}
      </span>
      <button type="button" className="to-enter" aria-label={`Copy: ${what}`} onClick={() => void copy()}>
        <span aria-live="polite">{said ?? 'copy'}</span>
      </button>
    </p>
  );
}
