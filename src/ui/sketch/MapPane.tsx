import { lazy, Suspense, useEffect, useRef } from 'react';
import type { MapHandle } from '../../map/index.ts';
import { useActions } from '../desk-context.ts';
import { readMapInk } from '../map-ink.ts';
import { useBasemap } from '../own/basemap-store.ts';
import { ruleNamed, useDistrict, useGiven, usePlace, useReading, useSketch, useTool } from '../state/index.ts';
import { MapFlag, Stencil } from '../survey/index.ts';
import { followStores } from './follow-stores.ts';
import { mapEvents } from './map-events.ts';
import { keepRoadsideStopped, roadsideStopped } from './roadside-stopped.ts';
import { toMapDistrict } from './to-map.ts';

/** Not a part of what must be there first: it brings the map projection along. */
const PlanPane = lazy(async () => ({ default: (await import('./PlanPane.tsx')).PlanPane }));

/** The map: loaded after the page has been painted, then kept in step with the desk. */
export function MapPane({ light }: { readonly light: 'day' | 'night' }) {
  const { desk, workers } = useActions();
  const element = useRef<HTMLDivElement>(null);
  const map = useRef<MapHandle | null>(null);
  const shown = useRef({ light, units: useReading.getState().units });
  const district = useDistrict((state) => state.district);
  const units = useReading((state) => state.units);
  const problem = useDistrict((state) => state.mapProblem);
  const ruleName = useGiven((state) => state.ruleName);
  const screen = usePlace((state) => state.screen);
  const upper = useSketch((state) => state.upper);
  const armed = useTool((state) => state.tool !== 'look');

  useEffect(() => {
    if (!district || !element.current) return;
    if (map.current) {
      map.current.setDistrict(toMapDistrict(district));
      return;
    }
    let gone = false;
    void import('../../map/index.ts').then(({ mount }) => {
      if (gone || !element.current) return;
      const { view } = usePlace.getState();
      const mounted = mount(element.current, {
        district: toMapDistrict(useDistrict.getState().district ?? district),
        ink: readMapInk(),
        units: useReading.getState().units,
        rule: ruleNamed(useGiven.getState().ruleName),
        tiles: {
          ground: (tile, signal) => workers.map.call('groundTile', tile, signal),
          contours: (tile, inUnits, signal) => workers.map.call('contourTile', { ...tile, units: inUnits }, signal),
        },
        roadside: {
          stretches: (box, signal) => workers.map.call('stretches', box, signal),
          read: (key, rule, signal) => workers.map.call('roadside', { key, rule }, signal),
          stopped: roadsideStopped(),
          onStopped: keepRoadsideStopped,
        },
        ...mapEvents(desk),
      });
      map.current = mounted;
      if (view) mounted.setLook({ at: view.at, zoom: view.zoom, bearingDeg: 0, pitchDeg: 0 });
      const { at, zoom } = mounted.look();
      desk.lookedAt({ at, zoom });
      stop.current = followStores(mounted);
      const { basemap } = useBasemap.getState();
      if (basemap) void mounted.setBasemap(basemap);
    });
    return () => {
      gone = true;
    };
  }, [district, desk, workers]);

  const stop = useRef<(() => void) | null>(null);
  useEffect(
    () => () => {
      stop.current?.();
      map.current?.remove();
      map.current = null;
    },
    [],
  );

  useEffect(() => useBasemap.subscribe(({ basemap }) => void map.current?.setBasemap(basemap)), []);
  useEffect(() => map.current?.setRule(ruleNamed(ruleName)), [ruleName]);
  useEffect(() => {
    if (!map.current) return;
    if (shown.current.light !== light) map.current.setInk(readMapInk());
    if (shown.current.units !== units) map.current.setUnits(units);
    shown.current = { light, units };
  }, [light, units]);

  return (
    <section className="map-pane" aria-label="Map" data-armed={armed || undefined}>
      <div ref={element} className="map-view" />
      <span className="phone-cross" aria-hidden="true" />
      {screen !== 'open' && <MapFlag />}
      {screen === 'survey' && <Stencil />}
      {screen === 'study' && upper === 'plan' && (
        <Suspense>
          <PlanPane light={light} />
        </Suspense>
      )}
      {screen === 'study' && (
        <fieldset className="words-switch upper-switch">
          <legend className="unseen">Above the profile</legend>
          {(['map', 'plan'] as const).map((name) => (
            <button
              key={name}
              type="button"
              aria-pressed={upper === name}
              onClick={() => useSketch.setState({ upper: name })}
            >
              {name}
            </button>
          ))}
        </fieldset>
      )}
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
