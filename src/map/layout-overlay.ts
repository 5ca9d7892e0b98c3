import type { FeatureCollection } from 'geojson';
import type { Map as MapView } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';
import { type Covered, labelRoom } from './label-room.ts';
import type { LayoutShapes, SpotShape } from './layout-shapes.ts';
import { type Box, beyond, boxAbout, halfway, middlesAbout, type Pixel, placeLabels } from './place-labels.ts';
import { dragSpot, type SpotEvents } from './spot-drag.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Half of 44 pixels: a finger's width about an anchor or a spot. */
const TOUCH_RADIUS = 22;
const DOT_RADIUS = 4.5;
/** Names of apparatus from this zoom on; farther out the outlines are too small to name. */
const NAMES_FROM_ZOOM = 17;
/** A shorter haul field has no room for a ruler, pixels. */
const RULER_FROM_PX = 30;
/** Room of a label above and below its letters' middle, pixels, and about an anchor, a mark and the site's cross. */
const LABEL_HIGH_PX = 15;
const DOT_ROOM_PX = 13;
const MARK_ROOM_PX = 20;
const CROSS_ROOM_PX = 20;

export interface LayoutEvents extends SpotEvents {
  /** A tap, or Enter, on an anchor of the layout: id of a spot or a mark. */
  onAnchor?(id: string): void;
}

/** The chosen layout over the map. */
export interface LayoutOverlay {
  setShapes(shapes: LayoutShapes | null): void;
  setUnits(units: UnitSystem): void;
  setStale(stale: boolean): void;
  /** Where the map's own names are to leave room for the layout: points, WGS 84. */
  room(): FeatureCollection;
  remove(): void;
}

/** A label of the layout; `middles` tells where it may stand, best first, for its width in pixels. */
interface Label {
  readonly element: SVGTextElement;
  middles(width: number): readonly Pixel[];
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
  let labels: Label[] = [];
  const widths = new Map<string, number>();
  /** Where the labels stand that have room. */
  let boxes: readonly Box[] = [];
  const at = (place: LonLat): Pixel => map.project([place.lon, place.lat]);
  const draw = (): void => {
    for (const place of placing) place();
    if (!shapes) return;
    const taken = [
      ...shapes.anchors.map((one) => boxAbout(at(one.at), DOT_ROOM_PX)),
      ...shapes.marks.map((mark) => boxAbout(at(mark), MARK_ROOM_PX)),
      ...shapes.belay.slice(-2, -1).map((edge) => boxAbout(at(edge), CROSS_ROOM_PX)),
    ];
    const wishes = labels.map((label) => {
      const width = widthOf(label.element);
      return { width, height: LABEL_HIGH_PX, middles: label.middles(width) };
    });
    const placed = placeLabels(wishes, taken);
    boxes = placed.filter((box) => box !== null);
    labels.forEach(({ element: words }, i) => {
      const box = placed[i];
      words.toggleAttribute('hidden', !box);
      if (box) moveText(words, { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 + 4 });
    });
  };
  const drag = dragSpot(map, events, draw);
  const room = labelRoom(map, (): Covered => {
    const { spots, field, haulFieldM } = shapes ?? { spots: [], field: [], haulFieldM: 0 };
    const cabs = spots.map((spot) => drag.shown(spot).outline.map(at));
    const lines = cabs.map(([a, b, c, d]): [Pixel, Pixel] => [halfway(a!, d!), halfway(b!, c!)]);
    if (haulFieldM > 0) lines.push([at(field[0]!), at(field[1]!)]);
    return { boxes: shapes ? boxes : [], lines };
  });

  function line(name: string, places: () => readonly LonLat[], close = false): SVGElement {
    const made = element('path', name);
    placing.push(() => made.setAttribute('d', pathOf(places().map(at), close)));
    return made;
  }

  /** Measured once for each text: a drawing that changes under a finger is not laid out for it. */
  function widthOf(words: SVGTextElement): number {
    const key = `${words.classList} ${words.textContent}`;
    const width = widths.get(key) ?? words.getComputedTextLength();
    if (width > 0) widths.set(key, width);
    return width;
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
    labels = [];
    room.touch();
    if (!shapes) return;
    const { keepOut, belay, main, hand, spots, anchors } = shapes;
    // Made first, names of apparatus choose their places before the ruler's words do.
    const groups = spots.map(spotGroup);
    svg.append(...keepOut.map((ring) => line('keep-out', () => ring, true)), ...ruler(shapes));
    for (const name of ['belay-halo', 'belay']) svg.append(line(name, () => belay));
    for (const name of ['rope-halo', 'rope']) svg.append(line(name, () => main));
    svg.append(
      line('hand', () => hand),
      ...groups,
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
    const across = () => {
      const [a, b] = [at(field[0]), at(field[1])];
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      const [nx, ny] = [-(b.y - a.y) / length, (b.x - a.x) / length];
      return length < RULER_FROM_PX
        ? null
        : (t: number, out: number): Pixel => ({
            x: a.x + t * (b.x - a.x) + out * nx,
            y: a.y + t * (b.y - a.y) + out * ny,
          });
    };
    placing.push(() => {
      const point = across();
      marks.toggleAttribute('hidden', !point);
      if (!point) return;
      const ticks = [0, 0.25, 0.5, 0.75, 1].map((t) => pathOf([point(t, 6), point(t, t % 0.5 === 0 ? 14 : 11)]));
      marks.setAttribute('d', pathOf([point(0, 10), point(1, 10)]) + ticks.join(''));
    });
    const middles = (width: number): Pixel[] => {
      const point = across();
      if (!point) return [];
      const off = (t: number, out: number): Pixel => beyond(point(t, 0), point(t, out), width, LABEL_HIGH_PX, 3);
      return [14, 30, -8, -24, 46].flatMap((out) => [0.5, 1, 0].map((t) => off(t, out)));
    };
    labels.push({ element: words, middles });
    return [marks, words];
  }

  function spotGroup(spot: SpotShape): SVGElement {
    const name = `spot${spot.chosen ? ' is-chosen' : ''}${spot.workable ? '' : ' is-unworkable'}`;
    const group = element('g', name);
    const problem = spot.workable ? '' : ', does not work here';
    label(group, spot.id, `${spot.words}${problem}. Drag it, or arrow keys move it 0.5 metres and [ ] turn it.`);
    const words = text('spot-words', spot.words);
    const middles = (width: number): Pixel[] =>
      map.getZoom() < NAMES_FROM_ZOOM ? [] : middlesAbout(drag.shown(spot).outline.map(at), width, LABEL_HIGH_PX);
    labels.push({ element: words, middles });
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
    room: room.data,
    remove() {
      room.remove();
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

function text(name: string, words: string): SVGTextElement {
  const made = element('text', name) as SVGTextElement;
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
