import type { Map as MapView } from 'maplibre-gl';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { MapInk, MapSite } from '../../src/map/index.ts';
import { siteSource } from '../../src/map/site-source.ts';

const frames = new Map<number, () => void>();
beforeEach(() => {
  let next = 1;
  vi.stubGlobal('requestAnimationFrame', (then: () => void) => {
    frames.set(next, then);
    return next++;
  });
  vi.stubGlobal('cancelAnimationFrame', (id: number) => frames.delete(id));
});
afterEach(() => {
  frames.clear();
  vi.unstubAllGlobals();
});
const nextFrame = (): void => {
  const due = [...frames.values()];
  frames.clear();
  for (const then of due) then();
};

const site: MapSite = { id: 'a', name: 'Slate Bend', lon: -120, lat: 40 };

/** A source over a map that only tells its events; `sides` gives what a look at the map finds, look by look. */
function over(sides: readonly ('left' | 'right')[], hasStyle = true) {
  let there = hasStyle;
  const listeners: Record<string, (() => void)[]> = {};
  const told: string[] = [];
  let repaints = 0;
  let looks = 0;
  const map = {
    on(event: string, then: () => void) {
      listeners[event] = [...(listeners[event] ?? []), then];
    },
    getSource: () =>
      there && {
        setData: ({ features }: GeoJSON.FeatureCollection) => told.push(features[0]!.properties!.side),
      },
    setLayerZoomRange: () => {},
    setLayoutProperty: () => {},
    triggerRepaint: () => repaints++,
  } as unknown as MapView;
  const at = () => sides[Math.min(looks, sides.length) - 1];
  const source = siteSource(
    map,
    {
      look: () => {
        const before = at();
        looks++;
        return at() !== before;
      },
      put: (sites) => sites.map((one) => ({ ...one, nameSide: at()! })),
    },
    () => ({ sites: [site], ink: {} as MapInk }),
  );
  const fire = (event: string): void => {
    for (const then of listeners[event] ?? []) then();
  };
  const bringStyle = (): void => {
    there = true;
  };
  return { source, fire, told, repaints: () => repaints, bringStyle };
}

test('a name turns once no step of a pan follows by the next frame', () => {
  const { source, fire, told } = over(['left', 'right']);
  source.show();
  expect(told).toEqual(['left']);
  fire('idle');
  expect(source.settled()).toBe(false);
  fire('movestart');
  nextFrame();
  expect(told).toEqual(['left']);
  fire('idle');
  nextFrame();
  expect(told).toEqual(['left', 'right']);
  expect(source.settled()).toBe(true);
});

test('a name turned to and fro draws nothing anew, and the map still comes to rest', () => {
  const { source, fire, told, repaints } = over(['left', 'right', 'left']);
  source.show();
  fire('idle');
  expect(source.settled()).toBe(false);
  nextFrame();
  expect(told).toEqual(['left']);
  expect(repaints()).toBe(1);
  expect(source.settled()).toBe(true);
});

test('a map at rest is not told the same sites again', () => {
  const { source, fire, told } = over(['left']);
  source.show();
  source.show();
  fire('idle');
  nextFrame();
  expect(told).toEqual(['left']);
  expect(source.settled()).toBe(true);
});

test('what was looked at before there is a style is drawn at the first rest', () => {
  const { source, fire, told, bringStyle } = over(['left'], false);
  source.show();
  expect(told).toEqual([]);
  bringStyle();
  fire('idle');
  nextFrame();
  expect(told).toEqual(['left']);
  expect(source.settled()).toBe(true);
});
