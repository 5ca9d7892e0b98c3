import { useLayoutEffect, useMemo, useRef } from 'react';
import { pairView } from '../../plan/index.ts';
import { useReading, useSketch, useStudy } from '../state/index.ts';
import { drawingOf } from './drawing.ts';
import { Scrub } from './Scrub.tsx';
import { useSitePlaces } from './use-site-places.ts';
import { useSize } from './use-size.ts';

/** Plan view and profile at one scale, the same drawing as on paper: of the whole study alone, since a draft has no layouts. */
export function PairSheet({ light }: { readonly light: 'day' | 'night' }) {
  const study = useStudy((state) => state.answer?.study ?? null);
  const units = useReading((state) => state.units);
  const places = useSitePlaces();
  const layoutId = useSketch((state) => state.layoutId);
  const frame = useRef<HTMLDivElement>(null);
  const paper = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const view = useMemo(() => {
    if (!study || !size) return null;
    return pairView(study, layoutId, { units, ...size, places, palette: light === 'night' ? 'night' : 'light' });
  }, [study, size, units, layoutId, light, places]);
  useLayoutEffect(() => {
    paper.current?.replaceChildren(...(view === null ? [] : [drawingOf(view.svg)]));
  }, [view]);
  return (
    <div ref={frame} className="pair" data-testid="plan">
      <div ref={paper} className="pair-paper" data-testid="profile" />
      {study && size && view?.at && <Scrub study={study} scale={view.at} width={size.width} units={units} />}
    </div>
  );
}
