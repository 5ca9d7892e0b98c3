import { useEffect, useRef } from 'react';
import type { MapDistrict, MapHandle } from '../../map/index.ts';
import { useActions } from '../desk-context.ts';
import { type OpenDistrict, useDesk } from '../desk-state.ts';
import { readMapInk } from '../map-ink.ts';

/** The map: loaded after the page has been painted, then kept in step with the desk. */
export function MapPane({ light }: { readonly light: 'day' | 'night' }) {
  const { desk, workers } = useActions();
  const element = useRef<HTMLDivElement>(null);
  const map = useRef<MapHandle | null>(null);
  const shown = useRef({ light, units: useDesk.getState().units });
  const district = useDesk((state) => state.district);
  const units = useDesk((state) => state.units);
  const problem = useDesk((state) => state.mapProblem);

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
        onMove: desk.move,
        onPlace: desk.placeAt,
        onSite: desk.goToSite,
        onProblem: desk.mapFailed,
      });
      follow(map.current, true);
    });
    return () => {
      gone = true;
    };
  }, [district, desk, workers]);

  useEffect(
    () =>
      useDesk.subscribe((state, before) => {
        if (!map.current) return;
        const moved = state.point !== before.point || state.look !== before.look;
        if (moved || state.answer !== before.answer || state.stale !== before.stale) {
          follow(map.current, state.look !== before.look);
        }
      }),
    [],
  );

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

/** Brings point and lines on the map in step with the desk. */
function follow(map: MapHandle, show: boolean): void {
  const { point, answer, stale } = useDesk.getState();
  map.setPoint(point);
  map.setShapes(answer?.shapes ?? null, stale);
  if (show && point) map.show(point);
}

const toMap = ({ view, invented }: OpenDistrict): MapDistrict => ({
  ...view,
  sites: view.list?.sites ?? [],
  attribution: `${invented ? 'Invented ground, roads and names. ' : ''}Elevation: ${view.elevation.map(({ source }) => source).join(', ')}. Map drawn with MapLibre.`,
});
