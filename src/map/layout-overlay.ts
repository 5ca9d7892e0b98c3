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
/** A shorter haul field has no room for a ruler, pixels. */
const RULER_FROM_PX = 30;

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
  /** What puts every element where it belongs on the screen; the elements stay, so that a press is not torn from its release. */
  let placing: (() => void)[] = [];
  const draw = (): void => {
    for (const place of placing) place();
  };
  const drag = dragSpot(map, events, draw);
  const at = (place: LonLat): { x: number; y: number } => map.project([place.lon, place.lat]);

  function line(name: string, places: () => readonly LonLat[], close = false): SVGElement {
    const made = element('path', name);
    placing.push(() => made.setAttribute('d', pathOf(places().map(at), close)));
    return made;
  }

  function circle(name: string, place: () => LonLat, r: number): SVGElement {
    const made = element('circle', name);
    made.setAttribute('r', `${r}`);
    placing.push(() => {
      const { x, y } = at(place());
      made.setAttribute('cx', x.toFixed(1));
      made.setAttribute('cy', y.toFixed(1));
    });
    return made;
  }

  function build(): void {
    const focused = (document.activeElement as SVGElement | null)?.dataset?.id ?? null;
    for (const child of [...svg.children]) if (child.nodeName !== 'defs') child.remove();
    placing = [];
    if (!shapes) return;
    const { keepOut, belay, main, hand, spots, anchors } = shapes;
    svg.append(...keepOut.map((ring) => line('keep-out', () => ring, true)), ...ruler(shapes));
    for (const name of ['belay-halo', 'belay']) svg.append(line(name, () => belay));
    for (const name of ['rope-halo', 'rope']) svg.append(line(name, () => main));
    svg.append(
      line('hand', () => hand),
      ...spots.map(spotGroup),
      ...anchors.map(anchorGroup),
    );
    draw();
    if (focused) svg.querySelector<SVGElement>(`[data-id="${CSS.escape(focused)}"]`)?.focus();
  }

  /** The haul field as a ruler beside its rope, with its length. */
  function ruler({ field, haulFieldM }: LayoutShapes): Element[] {
    if (haulFieldM <= 0) return [];
    const marks = element('path', 'ruler');
    const words = text('ruler-words', `haul field ${formatLength(haulFieldM, units, 'down')}`);
    placing.push(() => {
      const [a, b] = [at(field[0]), at(field[1])];
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      const long = length >= RULER_FROM_PX;
      for (const part of [marks, words]) part.toggleAttribute('hidden', !long);
      if (!long) return;
      const [nx, ny] = [-(b.y - a.y) / length, (b.x - a.x) / length];
      const point = (t: number, out: number) => ({
        x: a.x + t * (b.x - a.x) + out * nx,
        y: a.y + t * (b.y - a.y) + out * ny,
      });
      const ticks = [0, 0.25, 0.5, 0.75, 1].map((t) => pathOf([point(t, 6), point(t, t % 0.5 === 0 ? 14 : 11)]));
      marks.setAttribute('d', pathOf([point(0, 10), point(1, 10)]) + ticks.join(''));
      moveText(words, point(0.5, 26));
    });
    return [marks, words];
  }

  function spotGroup(spot: SpotShape): SVGElement {
    const name = `spot${spot.chosen ? ' is-chosen' : ''}${spot.workable ? '' : ' is-unworkable'}`;
    const group = element('g', name);
    const problem = spot.workable ? '' : ', does not work here';
    label(group, spot.id, `${spot.words}${problem}. Drag it, or arrow keys move it 0.5 metres and [ ] turn it.`);
    const words = text('spot-words', spot.words);
    placing.push(() => {
      words.toggleAttribute('hidden', map.getZoom() < NAMES_FROM_ZOOM);
      const { x, y } = at(drag.shown(spot).at);
      moveText(words, { x, y: y + 4 });
    });
    group.append(
      circle('touch', () => drag.shown(spot).at, TOUCH_RADIUS),
      line('outline', () => drag.shown(spot).outline, true),
      line('cab', () => drag.shown(spot).cab),
      words,
    );
    drag.listen(group, spot);
    return group;
  }

  function anchorGroup({ id, words, at: place }: LayoutShapes['anchors'][number]): SVGElement {
    const group = element('g', 'anchor');
    label(group, `anchor:${id}`, words);
    group.append(
      circle('touch', () => place, TOUCH_RADIUS),
      circle('dot', () => place, DOT_RADIUS),
    );
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
      build();
    },
    setUnits(next) {
      units = next;
      build();
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

function text(name: string, words: string): SVGElement {
  const made = element('text', name);
  made.textContent = words;
  return made;
}

function moveText(made: SVGElement, { x, y }: { x: number; y: number }): void {
  made.setAttribute('x', x.toFixed(1));
  made.setAttribute('y', y.toFixed(1));
}

const pathOf = (points: readonly { x: number; y: number }[], close = false): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('') +
  (close && points.length > 0 ? 'Z' : '');

function label(group: SVGElement, id: string, words: string): void {
  group.dataset.id = id;
  group.setAttribute('role', 'button');
  group.setAttribute('tabindex', '0');
  group.setAttribute('aria-label', words);
}
