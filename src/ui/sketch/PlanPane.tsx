import { useLayoutEffect, useMemo, useRef } from 'react';
import { planViewSvg } from '../../plan/index.ts';
import { useBook, usePlace, useReading, useSketch, useStudy } from '../state/index.ts';
import { drawingOf } from './drawing.ts';
import { useSize } from './use-size.ts';

/** The plan view, the same drawing as on paper, in the place of the map. */
export function PlanPane({ light }: { readonly light: 'day' | 'night' }) {
  const study = useStudy((state) => state.answer?.study ?? null);
  const stale = useStudy((state) => state.stale);
  const units = useReading((state) => state.units);
  const subject = usePlace((state) => state.subject);
  const zones = useBook((state) => state.supportPlaces);
  const layoutId = useSketch((state) => state.layoutId);
  const paper = useRef<HTMLDivElement>(null);
  const size = useSize(paper);
  const siteId = subject?.kind === 'site' ? subject.id : null;
  const svg = useMemo(() => {
    if (!study || !size) return null;
    const places = [...zones.values()].filter((place) => siteId !== null && place.siteId === siteId);
    return planViewSvg(study, layoutId, { units, ...size, places, palette: light === 'night' ? 'night' : 'light' });
  }, [study, size, units, layoutId, light, siteId, zones]);
  useLayoutEffect(() => {
    paper.current?.replaceChildren(...(svg === null ? [] : [drawingOf(svg)]));
  }, [svg]);
  return <div ref={paper} className={`plan-pane${stale ? ' is-stale' : ''}`} data-testid="plan" />;
}
