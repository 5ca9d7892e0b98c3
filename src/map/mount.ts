import type { FeatureCollection } from 'geojson';
import type { GeoJSONSource } from 'maplibre-gl';
import { setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url';
import 'maplibre-gl/dist/maplibre-gl.css';
import './map.css';
import './layout.css';
import './handles.css';
import { defaultAngleRule } from '../book/index.ts';
import { basemapControl, type MapFailure } from './basemap-control.ts';
import { cameraOf } from './camera.ts';
import { addFurniture } from './furniture.ts';
import { groundProtocol } from './ground-protocol.ts';
import { mapHandles } from './handles.ts';
import { layoutOverlay } from './layout-overlay.ts';
import { layoutShapes } from './layout-shapes.ts';
import { listen } from './listen.ts';
import { makeMap } from './make-map.ts';
import { markFeatures } from './mark-features.ts';
import { nameSides } from './name-sides.ts';
import { addNotices } from './notices.ts';
import type { MapHandle, MapOptions } from './options.ts';
import { studyOverlay } from './overlay.ts';
import { mapPoint } from './point.ts';
import { roadsideLayer } from './roadside.ts';
import { addRoadsidePatterns } from './roadside-patterns.ts';
import { addSiteRings } from './site-rings.ts';
import { siteSource } from './site-source.ts';
import { mapStyle } from './style/map-style.ts';
import { selectedFilters } from './style/site-layers.ts';
import { addSymbols } from './symbols.ts';

/** What a tile that left the view before it was drawn says; nobody need know. */
const abort = /abort|given up/i;

/**
 * Draws the district in an element and listens to fingers, mouse and keys. Flat, north stays up: figures are read off it.
 * Throws a `UserError` where the browser cannot draw it.
 */
export function mount(element: HTMLElement, options: MapOptions): MapHandle {
  setWorkerUrl(workerUrl);
  let { district, ink, units } = options;
  let issue = 1;
  let relief = false;
  let selected: string | null = null;
  let drawnInk: typeof ink | null = null;
  const protocol = groundProtocol(options.tiles);
  const urls = () => ({ ground: protocol.groundUrl(issue), contours: protocol.contourUrl(issue, units) });
  const nothing: FeatureCollection = { type: 'FeatureCollection', features: [] };
  const first = mapStyle(
    { district, ink, relief, basemap: null, roadside: nothing, labelRoom: nothing, selected },
    urls(),
  );
  const map = makeMap(
    {
      container: element,
      style: first,
      maxZoom: 20,
      attributionControl: false,
      touchPitch: false,
      pitchWithRotate: false,
      dragRotate: false,
      fadeDuration: 0,
    },
    protocol.remove,
  );
  const camera = cameraOf(map, element);
  camera.showDistrict(district);
  const drawnSites = siteSource(map, nameSides(map, element), () => ({ sites: district.sites, ink }));
  let ringed: string | null = null;
  /** Again once there is a style: a site may be selected before. */
  const showSelected = (): void => {
    if (ringed === selected || !map.getLayer('site-selected')) return;
    ringed = selected;
    for (const [layer, filter] of Object.entries(selectedFilters(selected))) map.setFilter(layer, filter);
  };
  /** `whole`: nothing of the old style is kept. */
  const restyle = (whole = false): void => {
    ringed = selected;
    const scene = { district: { ...district, sites: drawnSites.forStyle() }, ink, relief, selected };
    const drawn = { basemap: basemap.parts(), roadside: roadside.data(), labelRoom: layout.room() };
    map.setStyle(mapStyle({ ...scene, ...drawn }, urls()), { diff: !whole });
    tellSources();
  };

  const furniture = addFurniture(map, units, (on) => setRelief(on));
  const notices = addNotices(element, { onStop: () => roadside.stop(), onGoOn: () => roadside.goOn() });
  const basemap = basemapControl(map, { onChange: () => restyle(), onProblem: notices.setProblem });
  const rule = options.rule ?? defaultAngleRule;
  const roadside = roadsideLayer(map, options.roadside ?? null, rule, notices.setProgress);
  const overlay = studyOverlay(map, options.roadside === undefined);
  const layout = layoutOverlay(map, units, { ...options, onHold: roadside.pause });
  const point = mapPoint(map, 'study-point', 'Site point', { ...options, onHold: roadside.pause });
  const patient = mapPoint(map, 'study-point patient-point', 'Patient point', {
    onMove: (at) => options.onPatientMove?.(at),
    onPlace: (at) => options.onPatientPlace?.(at),
    onHold: roadside.pause,
  });
  const handles = mapHandles(map, options, roadside.pause);

  function tellSources(): void {
    furniture.setAttribution([district.attribution, ...basemap.attributions()]);
  }
  function setRelief(on: boolean): void {
    if (on === relief) return;
    relief = on;
    furniture.setRelief(on);
    restyle();
    camera.setRelief(on);
  }
  tellSources();
  map.on('sourcedata', ({ sourceDataType }) => {
    if (sourceDataType === 'metadata') tellSources();
  });
  map.on('styledata', () => {
    if (drawnInk === ink && map.hasImage('site-unread')) return;
    drawnInk = ink;
    addSymbols(map, ink);
    addSiteRings(map, ink);
    addRoadsidePatterns(map, ink);
  });
  map.on('error', (event) => {
    if (abort.test(event.error.message) || basemap.takes(event as unknown as MapFailure)) return;
    options.onProblem(event.error.message);
  });
  map.on('styledata', showSelected);
  map.on('webglcontextlost', () => options.onLost?.());
  listen(map, element, options, { all: () => district.sites, settled: drawnSites.settled });

  return {
    setDistrict(next) {
      district = next;
      issue++;
      selected = null;
      roadside.reset();
      restyle();
      camera.showDistrict(district);
    },
    setSites(sites) {
      district = { ...district, sites };
      drawnSites.show();
    },
    setMarks(marks) {
      district = { ...district, marks };
      map.getSource<GeoJSONSource>('marks')?.setData(markFeatures(marks));
    },
    setSelected(id) {
      selected = id;
      showSelected();
    },
    setInk(next) {
      ink = next;
      // On relief the lines lie in pictures of each tile, which a mere change of ink leaves as they are.
      restyle(relief);
    },
    setUnits(next) {
      units = next;
      restyle();
      furniture.setUnits(units);
      layout.setUnits(units);
    },
    setRule: (next) => roadside.setRule(next),
    setPoint: point.set,
    setPatient: patient.set,
    setShapes(shapes, stale) {
      overlay.setShapes(shapes);
      overlay.setStale(stale);
      layout.setStale(stale);
    },
    setLayout: (study, id) => layout.setShapes(study && layoutShapes(study, id)),
    setHair: overlay.setHair,
    setMeasured: overlay.setMeasured,
    setHandles: handles.set,
    setBasemap: basemap.set,
    setRelief,
    look: camera.look,
    setLook: camera.setLook,
    show: camera.show,
    showWhole: camera.showWhole,
    remove() {
      drawnSites.remove();
      roadside.remove();
      basemap.remove();
      overlay.remove();
      layout.remove();
      point.remove();
      patient.remove();
      handles.remove();
      map.remove();
      protocol.remove();
    },
  };
}
