import type { Map as MapView } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';
import type { LayoutShapes, SpotShape } from './layout-shapes.ts';
import { dragSpot, type SpotEvents } from './spot-drag.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Half of 44 pixels: a finger's width about an anchor or a spot. */
const TOUCH_RADIUS = 22;
const DOT_RADIUS = 4.5;
/** Names of apparatus from this zoom on; farther out the outlines are too small to name. */
const NAMES_FROM_ZOOM = 17;

export interface LayoutEvents extends SpotEvents {
  /** A tap, or Enter, on an anchor of the layout: id of a spot or a mark. */
  onAnchor?(id: string): void;
}

/** The chosen layout over the map. */
export interface LayoutOverlay {
  setShapes(shapes: LayoutShapes | null): void;
  setUnits(units: UnitSystem): void;
  setStale(stale: boolean): void;
  remove(): void;
}

/** Draws apparatus as true-size outlines, ropes, the haul field as a ruler and the keep-out; spots can be dragged, anchors tapped. */
export function layoutOverlay(map: MapView, first: UnitSystem, events: LayoutEvents): LayoutOverlay {
  const svg = element('svg', 'layout-lines');
  svg.innerHTML =
    '<defs><pattern id="keep-out-hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(52)">' +
    '<path class="hatch" d="M1.5 0V7M3.5 0V7"/></pattern></defs>';
  map.getCanvasContainer().append(svg);
  let units = first;
  let shapes: LayoutShapes | null = null;
  const drag = dragSpot(map, events, () => draw());

  const at = (place: LonLat): { x: number; y: number } => map.project([place.lon, place.lat]);
  const line = (places: readonly LonLat[], close = false): string =>
    places.length === 0
      ? ''
      : `${places
          .map(at)
          .map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
          .join('')}${close ? 'Z' : ''}`;

  function draw(): void {
    const focused = (document.activeElement as SVGElement | null)?.dataset?.id ?? null;
    for (const child of [...svg.children]) if (child.nodeName !== 'defs') child.remove();
    if (!shapes) return;
    const keepOut = path('keep-out', shapes.keepOut.map((ring) => line(ring, true)).join(''));
    svg.append(keepOut, ...ruler(shapes), path('belay-halo', line(shapes.belay)), path('belay', line(shapes.belay)));
    svg.append(path('rope-halo', line(shapes.main)), path('rope', line(shapes.main)), path('hand', line(shapes.hand)));
    for (const spot of shapes.spots) svg.append(spotGroup(drag.shown(spot)));
    for (const anchor of shapes.anchors) svg.append(anchorDot(anchor));
    if (focused) svg.querySelector<SVGElement>(`[data-id="${CSS.escape(focused)}"]`)?.focus();
  }

  /** The haul field as a ruler beside its rope, with its length. */
  function ruler({ field, haulFieldM }: LayoutShapes): Element[] {
    if (haulFieldM <= 0) return [];
    const [a, b] = [at(field[0]), at(field[1])];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length < 30) return [];
    const [nx, ny] = [-(b.y - a.y) / length, (b.x - a.x) / length];
    const point = (t: number, out: number): string =>
      `${(a.x + t * (b.x - a.x) + out * nx).toFixed(1)} ${(a.y + t * (b.y - a.y) + out * ny).toFixed(1)}`;
    const ticks = [0, 0.25, 0.5, 0.75, 1].map((t) => `M${point(t, 6)}L${point(t, t % 0.5 === 0 ? 14 : 11)}`);
    const label = element('text', 'ruler-words');
    label.textContent = `haul field ${formatLength(haulFieldM, units, 'down')}`;
    const [x, y] = point(0.5, 24).split(' ');
    label.setAttribute('x', x!);
    label.setAttribute('y', y!);
    return [path('ruler', `M${point(0, 10)}L${point(1, 10)}${ticks.join('')}`), label];
  }

  function spotGroup(spot: SpotShape): SVGElement {
    const name = `spot${spot.chosen ? ' is-chosen' : ''}${spot.workable ? '' : ' is-unworkable'}`;
    const group = element('g', name);
    const problem = spot.workable ? '' : ', does not work here';
    label(group, spot.id, `${spot.words}${problem}. Drag it, or arrow keys move it 0.5 metres and [ ] turn it.`);
    group.append(circle('touch', spot.at, TOUCH_RADIUS));
    group.append(path('outline', line(spot.outline, true)), path('cab', line(spot.cab)));
    if (map.getZoom() >= NAMES_FROM_ZOOM) {
      const words = element('text', 'spot-words');
      const { x, y } = at(spot.at);
      words.textContent = spot.words;
      words.setAttribute('x', x.toFixed(1));
      words.setAttribute('y', (y + 4).toFixed(1));
      group.append(words);
    }
    drag.listen(group, spot);
    return group;
  }

  function circle(name: string, place: LonLat, r: number): SVGElement {
    const made = element('circle', name);
    const { x, y } = at(place);
    made.setAttribute('cx', x.toFixed(1));
    made.setAttribute('cy', y.toFixed(1));
    made.setAttribute('r', `${r}`);
    return made;
  }

  function anchorDot({ id, words, at: place }: LayoutShapes['anchors'][number]): SVGElement {
    const group = element('g', 'anchor');
    label(group, `anchor:${id}`, words);
    group.append(circle('touch', place, TOUCH_RADIUS), circle('dot', place, DOT_RADIUS));
    const tell = (event: Event): void => {
      event.stopPropagation();
      events.onAnchor?.(id);
    };
    group.addEventListener('click', tell);
    group.addEventListener('keydown', (event) => {
      if (event.key === 'Enter') tell(event);
    });
    return group;
  }

  map.on('move', draw);
  map.on('resize', draw);
  // In relief a place moves on the screen when the ground under it has been read.
  map.on('idle', draw);
  return {
    setShapes(next) {
      shapes = next;
      draw();
    },
    setUnits(next) {
      units = next;
      draw();
    },
    setStale: (stale) => svg.classList.toggle('is-stale', stale),
    remove() {
      for (const event of ['move', 'resize', 'idle'] as const) map.off(event, draw);
      svg.remove();
    },
  };
}

function element(name: string, className: string): SVGElement {
  const made = document.createElementNS(SVG, name);
  made.setAttribute('class', className);
  return made;
}

function path(name: string, d: string): SVGElement {
  const made = element('path', name);
  made.setAttribute('d', d);
  return made;
}

function label(group: SVGElement, id: string, words: string): void {
  group.dataset.id = id;
  group.setAttribute('role', 'button');
  group.setAttribute('tabindex', '0');
  group.setAttribute('aria-label', words);
}
