import type { FeatureCollection, LineString, Position } from 'geojson';
import type { Map as MapView } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Pixels between the hachures of a drop edge, and their length. */
const HACHURE_EVERY = 7;
const HACHURE_LONG = 9;
const END_RADIUS = 7;

/** The study's lines over the map. */
export interface StudyOverlay {
  /** Lines of `studyShapes`: edges and the descent; null clears. */
  setShapes(shapes: FeatureCollection | null): void;
  setStale(stale: boolean): void;
  /** A place that the profile shows too, null for none. */
  setHair(at: LonLat | null): void;
  /** A line being measured, null for none. */
  setMeasured(line: readonly LonLat[] | null): void;
  remove(): void;
}

/**
 * Draws a study's measured lines as SVG over the map: a moved point changes a few paths, not the whole map's picture.
 * Drop edges carry hachures down-slope where `hachured` (no class bands lie there); the descent ends in the quartered disc.
 */
export function studyOverlay(map: MapView, hachured: boolean): StudyOverlay {
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('class', 'study-lines');
  svg.setAttribute('aria-hidden', 'true');
  map.getCanvasContainer().append(svg);
  const path = (name: string): SVGPathElement => {
    const element = document.createElementNS(SVG, 'path');
    element.setAttribute('class', name);
    svg.append(element);
    return element;
  };
  const halo = path('line-halo');
  const edges = path('line-edge');
  const dropEdges = path('line-edge line-drop');
  const hachures = path('line-hachure');
  const descentHalo = path('line-halo');
  const descent = path('line-descent');
  const start = path('line-start');
  const end = path('line-end');
  const endSolid = path('line-end-solid');
  const measuredHalo = path('line-halo');
  const measured = path('line-measured');
  const measuredEnds = path('line-measured-ends');
  const hair = path('line-hair');
  let shapes: FeatureCollection | null = null;
  let hairAt: LonLat | null = null;
  let measuredLine: readonly LonLat[] = [];

  const draw = (): void => {
    const lines = { edge: '', drop: '', hachures: '', descent: '', start: '', end: '', endSolid: '' };
    for (const { geometry, properties } of shapes?.features ?? []) {
      const points = (geometry as LineString).coordinates.map((at: Position) => map.project([at[0]!, at[1]!]));
      const d = pathOf(points);
      if (properties?.what === 'descent') {
        lines.descent += d;
        lines.start = disc(points[0]!, 4);
        lines.end = disc(points.at(-1)!, END_RADIUS);
        lines.endSolid = twoQuarters(points.at(-1)!);
      } else if (properties?.drop) {
        lines.drop += d;
        if (hachured) lines.hachures += hachuresOf(points, properties.side === 'right' ? 1 : -1);
      } else lines.edge += d;
    }
    halo.setAttribute('d', lines.edge + lines.drop);
    edges.setAttribute('d', lines.edge);
    dropEdges.setAttribute('d', lines.drop);
    hachures.setAttribute('d', lines.hachures);
    descentHalo.setAttribute('d', lines.descent);
    descent.setAttribute('d', lines.descent);
    start.setAttribute('d', lines.start);
    end.setAttribute('d', lines.end);
    endSolid.setAttribute('d', lines.endSolid);
    drawSmall();
  };
  const drawSmall = (): void => {
    hair.setAttribute('d', hairAt ? disc(map.project([hairAt.lon, hairAt.lat]), 4.5) : '');
    const points = measuredLine.map(({ lon, lat }) => map.project([lon, lat]));
    const ends = points.map((at) => disc(at, 3)).join('');
    measuredHalo.setAttribute('d', pathOf(points) + ends);
    measured.setAttribute('d', pathOf(points));
    measuredEnds.setAttribute('d', ends);
  };
  map.on('move', draw);
  map.on('resize', draw);
  // In relief a place moves on the screen when the ground under it has been read.
  map.on('idle', draw);
  return {
    setShapes(next) {
      shapes = next;
      draw();
    },
    setStale: (stale) => svg.classList.toggle('is-stale', stale),
    setHair(at) {
      hairAt = at;
      drawSmall();
    },
    setMeasured(line) {
      measuredLine = line ?? [];
      drawSmall();
    },
    remove() {
      for (const event of ['move', 'resize', 'idle'] as const) map.off(event, draw);
      svg.remove();
    },
  };
}

interface Pixel {
  readonly x: number;
  readonly y: number;
}

const px = (value: number): string => value.toFixed(1);

const pathOf = (points: readonly Pixel[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');

const disc = ({ x, y }: Pixel, r: number): string =>
  `M${px(x - r)} ${px(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;

/** The solid quarters of the disc at the end of a descent: upper right and lower left. */
function twoQuarters({ x, y }: Pixel): string {
  const r = END_RADIUS;
  const centre = `M${px(x)} ${px(y)}`;
  return `${centre}v${-r}a${r} ${r} 0 0 1 ${r} ${r}z${centre}v${r}a${r} ${r} 0 0 1 ${-r} ${-r}z`;
}

/** Short strokes off a line, `side` 1 to the right of its direction, evenly spaced along it. */
function hachuresOf(points: readonly Pixel[], side: 1 | -1): string {
  let out = '';
  let left = HACHURE_EVERY / 2;
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i]!;
    const b = points[i + 1]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length === 0) continue;
    const ux = (b.x - a.x) / length;
    const uy = (b.y - a.y) / length;
    while (left <= length) {
      const x = a.x + ux * left;
      const y = a.y + uy * left;
      out += `M${px(x)} ${px(y)}l${px(-uy * side * HACHURE_LONG)} ${px(ux * side * HACHURE_LONG)}`;
      left += HACHURE_EVERY;
    }
    left -= length;
  }
  return out;
}
