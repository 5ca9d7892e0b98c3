import type { Map as MapView } from 'maplibre-gl';
import { FOOT_M, toRadians, type UnitSystem } from '../units/index.ts';
import { attributionNodes } from './attribution.ts';

const SVG = 'http://www.w3.org/2000/svg';
const LONGEST_PX = 150;

/** North, scale and the line that says whose data these are, drawn like the sheet's own. */
export interface Furniture {
  setUnits(units: UnitSystem): void;
  /** Whose data are shown: a line each, the district's first; links as HTML of the sources that bring them. */
  setAttribution(lines: readonly string[]): void;
  setRelief(on: boolean): void;
}

/** Adds north, scale bar, buttons for zoom and relief, keyboard cross and attribution to a map's element. */
export function addFurniture(map: MapView, first: UnitSystem, onRelief: (on: boolean) => void): Furniture {
  let units = first;
  const corner = add(map, 'map-corner');
  const zoom = document.createElement('div');
  zoom.className = 'map-zoom';
  zoom.append(
    button('+', 'Zoom in', () => map.zoomIn()),
    button('−', 'Zoom out', () => map.zoomOut()),
  );
  const relief = button('3D', '3D relief', () => onRelief(relief.getAttribute('aria-pressed') !== 'true'));
  relief.setAttribute('aria-pressed', 'false');
  zoom.append(relief);
  corner.append(zoom);
  const scale = document.createElementNS(SVG, 'svg');
  scale.setAttribute('class', 'map-scale');
  scale.setAttribute('role', 'img');
  corner.prepend(scale);
  const attribution = add(map, 'map-attribution');
  // On a phone it is one line until it is touched.
  attribution.tabIndex = -1;
  const cross = add(map, 'map-cross');
  cross.setAttribute('aria-hidden', 'true');
  const canvas = map.getCanvas();
  canvas.addEventListener('focus', () => cross.classList.toggle('is-shown', canvas.matches(':focus-visible')));
  canvas.addEventListener('blur', () => cross.classList.remove('is-shown'));

  const draw = (): void => {
    const { lat } = map.getCenter();
    const metresPerPx = (78271.517 * Math.cos(toRadians(lat))) / 2 ** map.getZoom();
    const unitM = units === 'us' ? FOOT_M : 1;
    const name = units === 'us' ? 'ft' : 'm';
    const length = roundLength((LONGEST_PX * metresPerPx) / unitM);
    drawScale(scale, (length * unitM) / metresPerPx, length, name, map.getBearing());
  };
  map.on('zoom', draw);
  map.on('rotate', draw);
  draw();
  return {
    setUnits(next) {
      units = next;
      draw();
    },
    setAttribution: (lines) => attribution.replaceChildren(...attributionNodes(lines)),
    setRelief(on) {
      relief.setAttribute('aria-pressed', `${on}`);
    },
  };
}

/** The roundest length not over `longest`: 1, 2 or 5 times a power of ten. */
export function roundLength(longest: number): number {
  const power = 10 ** Math.floor(Math.log10(longest));
  const share = longest / power;
  return (share >= 5 ? 5 : share >= 2 ? 2 : 1) * power;
}

function drawScale(svg: SVGElement, widthPx: number, length: number, unit: string, bearingDeg: number): void {
  const x = 8;
  const half = widthPx / 2;
  const width = widthPx + 74;
  svg.setAttribute('viewBox', `0 0 ${width.toFixed(1)} 34`);
  svg.setAttribute('width', width.toFixed(1));
  svg.setAttribute('height', '34');
  const turn = Math.round(bearingDeg);
  const north = turn === 0 ? 'North is up' : `North is ${Math.abs(turn)}° to the ${turn > 0 ? 'left' : 'right'} of up`;
  svg.setAttribute('aria-label', `${north}. Scale bar: ${length} ${unit}.`);
  // In relief the bar holds at the middle of the map.
  const turned = { transform: `rotate(${-turn} ${(width - 22).toFixed(1)} 18)` };
  const parts: [string, Record<string, string>, string?][] = [
    ['rect', { class: 'bar-hollow', x: `${x}`, y: '20', width: widthPx.toFixed(1), height: '4' }],
    ['rect', { class: 'bar-solid', x: `${x}`, y: '20', width: half.toFixed(1), height: '4' }],
    ['text', { class: 'map-figure', x: `${x}`, y: '15', 'text-anchor': 'middle' }, '0'],
    ['text', { class: 'map-figure', x: (x + half).toFixed(1), y: '15', 'text-anchor': 'middle' }, `${length / 2}`],
    ['text', { class: 'map-figure', x: (x + widthPx).toFixed(1), y: '15', 'text-anchor': 'middle' }, `${length}`],
    ['text', { class: 'map-figure', x: (x + widthPx + 8).toFixed(1), y: '26' }, unit],
    ['path', { class: 'north', d: `M${(width - 22).toFixed(1)} 30V14l-4 6h8l-4 -6`, ...turned }],
    [
      'text',
      { class: 'map-figure strong', x: (width - 22).toFixed(1), y: '11', 'text-anchor': 'middle', ...turned },
      'N',
    ],
  ];
  svg.replaceChildren(
    ...parts.map(([name, attributes, words]) => {
      const element = document.createElementNS(SVG, name);
      for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
      if (words !== undefined) element.textContent = words;
      return element;
    }),
  );
}

function add(map: MapView, name: string): HTMLDivElement {
  const element = document.createElement('div');
  element.className = name;
  map.getContainer().append(element);
  return element;
}

function button(words: string, label: string, onClick: () => void): HTMLButtonElement {
  const element = document.createElement('button');
  element.type = 'button';
  element.textContent = words;
  element.setAttribute('aria-label', label);
  element.addEventListener('click', onClick);
  return element;
}
