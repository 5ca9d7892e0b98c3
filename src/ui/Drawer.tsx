import { type PointerEvent, type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { usePlace } from './state/index.ts';

const states = ['peek', 'half', 'full'] as const;
type DrawerState = (typeof states)[number];

/** A drag shorter than this is a tap, pixels. */
const TAP_PX = 8;
const STEP_PX = 60;

/**
 * The notes: a page on a desk, a drawer with three heights on a phone, opened by its handle: tap, drag, or Enter. `foot`
 * stays in sight at every height.
 */
export function Drawer({ children, foot }: { readonly children: ReactNode; readonly foot: ReactNode }) {
  const [state, setState] = useState<DrawerState>('peek');
  const scroll = useRef<HTMLDivElement>(null);
  // A point that is dragged about stays the same subject: what somebody reads of it stays in sight.
  const about = usePlace(({ screen, subject }) => `${screen} ${subject?.kind === 'site' ? subject.id : subject?.kind}`);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whatever is opened is read from its sentence on.
  useLayoutEffect(() => {
    scroll.current?.scrollTo(0, 0);
  }, [about]);
  const startY = useRef<number | null>(null);
  const step = (by: number): void => {
    const next = Math.min(states.length - 1, Math.max(0, states.indexOf(state) + by));
    setState(states[next]);
  };
  const onPointerDown = (event: PointerEvent<HTMLButtonElement>): void => {
    startY.current = event.clientY;
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const onPointerUp = (event: PointerEvent): void => {
    const dy = event.clientY - (startY.current ?? event.clientY);
    if (Math.abs(dy) > TAP_PX) step(-Math.sign(dy) * Math.max(1, Math.round(Math.abs(dy) / STEP_PX / 3)));
  };
  const onClick = (event: { clientY: number; detail: number }): void => {
    const moved = event.detail > 0 && Math.abs(event.clientY - (startY.current ?? event.clientY)) > TAP_PX;
    if (!moved) setState(state === 'full' ? 'peek' : states[states.indexOf(state) + 1]);
  };
  return (
    <article className="notes" data-drawer={state}>
      <button
        type="button"
        className="drawer-handle"
        aria-expanded={state !== 'peek'}
        aria-label={state === 'full' ? 'Close the notes' : 'Open the notes further'}
        onPointerDown={onPointerDown}
        onPointerUp={onPointerUp}
        onClick={onClick}
      />
      <div ref={scroll} className="notes-scroll">
        {children}
      </div>
      {foot}
    </article>
  );
}
