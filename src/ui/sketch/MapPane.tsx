import { useEffect, useRef } from 'react';
import { type AngleRule, angleRules, defaultAngleRule } from '../../book/index.ts';
import type { MapDistrict, MapHandle } from '../../map/index.ts';
import { useActions } from '../desk-context.ts';
import { type OpenDistrict, useDesk } from '../desk-state.ts';
import { readMapInk } from '../map-ink.ts';

/** The map: loaded after the page has been painted, then kept in step with the desk. */
export function MapPane({ light }: { readonly light: 'day' | 'night' }) {
  const { desk, workers } = useActions();
  const element = useRef<HTMLDivElement>(null);
  const map = useRef<MapHandle | null>(null);
  const looks = useRef<Looks>({ near: 0, whole: 0 });
  const shown = useRef({ light, units: useDesk.getState().units });
  const district = useDesk((state) => state.district);
  const units = useDesk((state) => state.units);
  const problem = useDesk((state) => state.mapProblem);
  const ruleName = useDesk((state) => state.ruleName);

  useEffect(() => {
    if (!district || !element.current) return;
    if (map.current) {
      map.current.setDistrict(toMap(district));
      return;
    }
    let gone = false;
    void import('../../map/index.ts').then(({ mount }) => {
      if (gone || !element.current) return;
      map.current = mount(element.current, {
        district: toMap(useDesk.getState().district ?? district),
        ink: readMapInk(),
        units: useDesk.getState().units,
        tiles: {
          ground: (tile, signal) => workers.map.call('groundTile', tile, signal),
          contours: (tile, inUnits, signal) => workers.map.call('contourTile', { ...tile, units: inUnits }, signal),
        },
        roadside: {
          stretches: (box, signal) => workers.map.call('stretches', box, signal),
          read: (key, rule, signal) => workers.map.call('roadside', { key, rule }, signal),
        },
        rule: ruleNamed(useDesk.getState().ruleName),
        onMove: desk.move,
        onPlace: desk.placeAt,
        onSite: desk.goToSite,
        onFiles: desk.drop,
        onProblem: desk.mapFailed,
      });
      follow(map.current, looks.current);
    });
    return () => {
      gone = true;
    };
  }, [district, desk, workers]);

  useEffect(
    () =>
      useDesk.subscribe((state, before) => {
        const same = (['point', 'look', 'answer', 'stale', 'working'] as const).every(
          (key) => state[key] === before[key],
        );
        if (map.current && !same) follow(map.current, looks.current);
      }),
    [],
  );

  useEffect(() => map.current?.setRule(ruleNamed(ruleName)), [ruleName]);

  useEffect(() => {
    if (!map.current) return;
    if (shown.current.light !== light) map.current.setInk(readMapInk());
    if (shown.current.units !== units) map.current.setUnits(units);
    shown.current = { light, units };
  }, [light, units]);

  useEffect(
    () => () => {
      map.current?.remove();
      map.current = null;
    },
    [],
  );

  return (
    <section className="map-pane" aria-label="Map">
      <div ref={element} className="map-view" />
      {problem && <p className="map-problem">{problem}</p>}
    </section>
  );
}

/** Which of the desk's looks the map has answered: by going near, and by widening to the whole descent. */
interface Looks {
  near: number;
  whole: number;
}

/** Brings point, lines and view on the map in step with the desk. */
function follow(map: MapHandle, looks: Looks): void {
  const { point, answer, stale, working, look } = useDesk.getState();
  map.setPoint(point);
  map.setShapes(answer?.shapes ?? null, stale);
  const study = answer?.study ?? null;
  // Where a technical rope team is needed, no layout is shown as if the first crew could rig it.
  const layout = study?.angle?.planAs === 'high' ? null : (study?.layouts[0]?.id ?? null);
  map.setLayout(study, layout);
  if (!point) return;
  if (looks.near !== look) map.show(point);
  looks.near = look;
  if (looks.whole === look || working) return;
  looks.whole = look;
  const end = answer?.study.descent?.end;
  if (end) map.showWhole(point, end);
}

const ruleNamed = (name: string): AngleRule => angleRules.find((rule) => rule.name === name) ?? defaultAngleRule;

const toMap = ({ view, invented }: OpenDistrict): MapDistrict => ({
  ...view,
  sites: view.list?.sites ?? [],
  attribution: `${invented ? 'Invented ground, roads and names. ' : ''}Elevation: ${view.elevation.map(({ source }) => source).join(', ')}. Map drawn with MapLibre.`,
});
