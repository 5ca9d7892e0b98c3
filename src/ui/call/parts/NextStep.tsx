/** @jsxImportSource preact */
import { useState } from 'preact/hooks';
import type { NextWords } from '../plan/index.ts';
import { Calls } from './Calls.tsx';

/** The one thing to do next; a tap opens the list of whom to call. Planned as high it stands open. */
export function NextStep({ next, high }: { next: NextWords; high: boolean }) {
  const [open, setOpen] = useState(high);
  return (
    <div class="next-step">
      <button type="button" class="next" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span>
          {next.text}
          {next.more && <small>{next.more}</small>}
        </span>
        <svg width="22" height="26" viewBox="0 0 22 26" aria-hidden="true">
          <path d={open ? 'M2 17l9 -10 9 10' : 'M5 3l12 10L5 23'} />
        </svg>
      </button>
      {open && <Calls calls={next.calls} />}
    </div>
  );
}
