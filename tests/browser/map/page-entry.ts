// The map by itself on a page, over the demo district; what a test may reach stands on `window`.

import type { MapDistrict, MapHandle, MapInk, MapOptions, MapSite } from '../../../src/map/index.ts';
import { mount } from '../../../src/map/index.ts';
import type { Study } from '../../../src/study/index.ts';
import '../../../src/ui/styles/tokens.css';
import { defaultAngleRule } from '../../../src/book/index.ts';
import { forget, keep, kept, keptFiles } from '../../../src/io/web/keep-files.ts';
import { storageUsed } from '../../../src/io/web/storage-used.ts';
import { startStudyWorker } from '../../../src/workers/web/start-study-worker.ts';

/** What the map told, newest last. */
export type Told = readonly [string, ...unknown[]];

declare global {
  interface Window {
    mapReady: Promise<void>;
    mapHandle: MapHandle;
    mapInk: MapInk;
    told: Told[];
    district: MapDistrict;
    studyAt(lon: number, lat: number): Promise<Study>;
    keeping: {
      keep: typeof keep;
      kept: typeof kept;
      keptFiles: typeof keptFiles;
      forget: typeof forget;
      storageUsed: typeof storageUsed;
    };
    openKept(id: string): Promise<string>;
  }
}

const token = (name: string): string => getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();

function inkOf(light: 'day' | 'night'): MapInk {
  document.documentElement.dataset.light = light;
  const names = [
    'paper',
    'leaf',
    'ink',
    'rule',
    'accent',
    'water',
    'wood',
    'contour',
    'low',
    'steep',
    'high',
    'words',
    'figures',
  ] as const;
  const ink = Object.fromEntries(names.map((name) => [name, token(name)]));
  const more = { ink2: token('ink-2'), contour2: token('contour-2'), contourText: token('contour-text') };
  return { ...ink, ...more, night: light === 'night' } as unknown as MapInk;
}

async function start(): Promise<void> {
  const asked = new URLSearchParams(location.search);
  const light = asked.get('light') === 'night' ? 'night' : 'day';
  const worker = startStudyWorker('map');
  const file = (name: string): string => new URL(`/demo/${name}`, location.href).href;
  const files = { options: {}, roads: file('roads.geojson'), marks: file('marks.geojson') };
  const view = await worker.call('open', {
    ...files,
    elevation: [file('elevation-1m.tif'), file('elevation-10m.tif')],
  });
  const count = Number(asked.get('sites') ?? Number.NaN);
  const sites: readonly MapSite[] = Number.isNaN(count)
    ? await demoSites(file('sites.json'))
    : strewn(count, view.elevationBounds);
  window.district = { ...view, sites, attribution: 'Invented ground, roads and names.' };
  window.told = [];
  const tell =
    (name: string) =>
    (...what: unknown[]): void => {
      window.told.push([name, ...what]);
    };
  window.mapInk = inkOf(light);
  const options: MapOptions = {
    district: window.district,
    ink: window.mapInk,
    units: 'us',
    tiles: {
      ground: (tile, signal) => worker.call('groundTile', tile, signal),
      contours: (tile, units, signal) => worker.call('contourTile', { ...tile, units }, signal),
    },
    ...(asked.has('roadside')
      ? {
          roadside: {
            stretches: (box, signal) => worker.call('stretches', box, signal),
            read: (key, rule, signal) => worker.call('roadside', { key, rule }, signal),
          },
        }
      : {}),
    rule: defaultAngleRule,
    onMove: tell('move'),
    onPlace: tell('place'),
    onSite: tell('site'),
    onMark: tell('mark'),
    onAnchor: tell('anchor'),
    onSpotMove: tell('spot move'),
    onSpotPlace: tell('spot place'),
    onPatientPlace: tell('patient'),
    onLook: tell('look'),
    onProblem: tell('problem'),
  };
  window.mapHandle = mount(document.querySelector<HTMLElement>('#map')!, options);
  window.studyAt = async (lon, lat) => {
    const { study } = await worker.call('study', {
      at: { lon, lat },
      side: 'of the point',
      rule: defaultAngleRule,
      units: 'us',
    });
    return study;
  };
  window.keeping = { keep, kept, keptFiles, forget, storageUsed };
  window.openKept = async (id) => {
    const found = await keptFiles(id);
    const opened = await worker.call('open', {
      ...files,
      elevation: found.elevation,
      roads: found.roads,
      marks: null,
    });
    return opened.elevation.map(({ source }) => source).join();
  };
}

/** The demo's sites as its recipe lists them. */
async function demoSites(url: string): Promise<MapSite[]> {
  return (await (await fetch(url)).json()).sites;
}

/** Sites strewn evenly over a box, the same at every run, of every look. */
function strewn(count: number, { west, east, south, north }: MapDistrict['elevationBounds']): MapSite[] {
  const looks = ['low', 'steep', 'high', 'undecided'] as const;
  const golden = 0.6180339887;
  return Array.from({ length: count }, (_, i) => ({
    id: `s${i}`,
    name: `Site ${i}`,
    lon: west + (east - west) * ((i * golden) % 1),
    lat: south + (north - south) * ((i + 0.5) / count),
    look: looks[i % 4]!,
    figures: '34°, 33 to 36',
    unchecked: i % 3 === 0,
  }));
}

window.mapReady = start();
