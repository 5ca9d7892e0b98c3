import { useLayoutEffect, useMemo, useRef } from 'react';
import { planViewSvg } from '../../plan/index.ts';
import { useReading, useSketch, useStudy } from '../state/index.ts';
import { drawingOf } from './drawing.ts';
import { useSitePlaces } from './use-site-places.ts';
import { useSize } from './use-size.ts';

/** The plan view, the same drawing as on paper, in the place of the map. */
export function PlanPane({ light }: { readonly light: 'day' | 'night' }) {
  const study = useStudy((state) => state.answer?.study ?? null);
  const stale = useStudy((state) => state.stale);
  const units = useReading((state) => state.units);
  const places = useSitePlaces();
  const layoutId = useSketch((state) => state.layoutId);
  const paper = useRef<HTMLDivElement>(null);
  const size = useSize(paper);
  const svg = useMemo(() => {
    if (!study || !size) return null;
    return planViewSvg(study, layoutId, { units, ...size, places, palette: light === 'night' ? 'night' : 'light' });
  }, [study, size, units, layoutId, light, places]);
  useLayoutEffect(() => {
    paper.current?.replaceChildren(...(svg === null ? [] : [drawingOf(svg)]));
  }, [svg]);
  return <div ref={paper} className={`plan-pane${stale ? ' is-stale' : ''}`} data-testid="plan" />;
}
