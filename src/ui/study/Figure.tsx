import type { ReactNode } from 'react';
import { useSketch } from '../state/index.ts';
import type { WhyCase } from './why.ts';

/** A number that answers "why" when tapped. `ink` is how it came to be. */
export function Figure({ why, ink = 'computed', children }: Props) {
  const open = useSketch((state) => state.why?.key === why.key);
  return (
    <button
      type="button"
      className={`figure-key num ${ink}`}
      aria-expanded={open}
      aria-controls="why"
      data-why={why.key}
      onClick={() => useSketch.setState({ why: open ? null : why })}
    >
      {children}
      <span className="unseen">, why</span>
    </button>
  );
}

interface Props {
  readonly why: WhyCase;
  readonly ink?: string;
  readonly children: ReactNode;
}
