import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { profileSvg } from '../../plan/index.ts';
import { useDesk } from '../desk-state.ts';

/** The true-scale profile, the same drawing as on paper, as large as its pane. */
export function ProfilePane() {
  const answer = useDesk((state) => state.answer);
  const stale = useDesk((state) => state.stale);
  const units = useDesk((state) => state.units);
  const pane = useRef<HTMLElement>(null);
  const paper = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);

  useEffect(() => {
    if (!pane.current) return;
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry.contentRect;
      if (width > 0 && height > 0) setSize({ width: Math.round(width), height: Math.round(height) });
    });
    watch.observe(pane.current);
    return () => watch.disconnect();
  }, []);

  const profiled = answer?.study.profile ? answer.study : null;
  const svg = useMemo(
    () => (profiled && size ? profileSvg(profiled, { units, ...size }) : null),
    [profiled, size, units],
  );
  useLayoutEffect(() => {
    const drawing = svg === null ? [] : [drawingOf(svg)];
    paper.current?.replaceChildren(...drawing);
  }, [svg]);

  return (
    <section ref={pane} className={`profile-pane${stale ? ' is-stale' : ''}`} aria-label="Profile">
      <div ref={paper} className="profile-paper" data-testid="profile" />
      {!profiled && <EmptyProfile asked={answer !== null} />}
    </section>
  );
}

/** Neat line and what to do, in the place of the missing drawing. */
const EmptyProfile = ({ asked }: { readonly asked: boolean }) => (
  <p className="profile-empty">
    {asked ? 'No profile: there is no descent on this side.' : 'The slope below the edge is drawn here at true scale.'}
  </p>
);

/** The drawing as a node; its text was escaped where it was made, and markup that is not well formed is refused here. */
function drawingOf(svg: string): Element {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (root.nodeName !== 'svg') throw new Error('The profile is not well-formed SVG.');
  return root;
}
