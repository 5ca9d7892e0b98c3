import { lazy, Suspense, useEffect, useRef } from 'react';
import type { MapHandle } from '../../map/index.ts';
import { useActions } from '../desk-context.ts';
import { readMapInk } from '../map-ink.ts';
import { useBasemap } from '../own/basemap-store.ts';
import { ruleNamed, useDistrict, useGiven, useMapGone, usePlace, useReading, useTool } from '../state/index.ts';
import { MapFlag, Stencil } from '../survey/index.ts';
import { MapGone } from './MapGone.tsx';
import { UpperSwitch } from './UpperSwitch.tsx';
import { useMap } from './use-map.ts';
import { useUpper } from './use-upper.ts';

/** Not a part of what must be there first: it brings the map projection along. */
const PlanPane = lazy(async () => ({ default: (await import('./PlanPane.tsx')).PlanPane }));

/** The map: loaded after the page has been painted, then kept in step with the desk. */
export function MapPane({ light }: { readonly light: 'day' | 'night' }) {
  const element = useRef<HTMLDivElement>(null);
  const map = useRef<MapHandle | null>(null);
  const { attempt, again } = useMap(element, map);
  const { desk } = useActions();
  const gone = useMapGone((state) => state.gone);
  const shown = useRef({ light, units: useReading.getState().units });
  const units = useReading((state) => state.units);
  const problem = useDistrict((state) => state.mapProblem);
  const ruleName = useGiven((state) => state.ruleName);
  const screen = usePlace((state) => state.screen);
  const upper = useUpper();
  const isCovered = upper !== 'map';
  const armed = useTool((state) => state.tool !== 'look');

  // A tool that brought the map from under the plan view goes on by keys: the map's are those of its canvas.
  const wasCovered = useRef(isCovered);
  useEffect(() => {
    if (wasCovered.current && !isCovered && armed) element.current?.querySelector('canvas')?.focus();
    wasCovered.current = isCovered;
  }, [isCovered, armed]);

  useEffect(() => useBasemap.subscribe(({ basemap }) => void map.current?.setBasemap(basemap)), []);
  useEffect(() => map.current?.setRule(ruleNamed(ruleName)), [ruleName]);
  useEffect(() => {
    const before = shown.current;
    shown.current = { light, units };
    if (before.light !== light) map.current?.setInk(readMapInk());
    if (before.units !== units) map.current?.setUnits(units);
  }, [light, units]);

  return (
    <section
      className="map-pane"
      aria-label="Map"
      data-armed={armed || undefined}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        const files = [...event.dataTransfer.files];
        if (files.length > 0) desk.drop(files);
      }}
    >
      <div key={attempt} ref={element} className="map-view" inert={isCovered} />
      {gone === null && <span className="phone-cross" aria-hidden="true" />}
      {gone !== null && !isCovered && <MapGone why={gone} again={again} />}
      {screen !== 'open' && <MapFlag />}
      {screen === 'survey' && <Stencil />}
      {upper === 'plan' && (
        <Suspense>
          <PlanPane light={light} />
        </Suspense>
      )}
      {screen === 'study' && <UpperSwitch upper={upper} />}
      {problem && (
        <p className="map-problem" role="status">
          {problem}{' '}
          <button type="button" className="key-quiet" onClick={() => useDistrict.setState({ mapProblem: null })}>
            close
          </button>
        </p>
      )}
    </section>
  );
}
