import type { Grid } from './grid.ts';
import type { GroundLayer, SurfaceInfo, TerrainKind } from './surface.ts';

/** Cells of two rasters that are this near, in cells, are on one lattice. */
const ON_LATTICE = 0.01;

/**
 * Joins windows of rasters whose cells lie on one lattice, as tiles of one survey do: between the outer cell centres of two
 * tiles that abut there would otherwise be a strip without ground. Where two have data the earlier one counts. What the tiles
 * say of themselves is taken at its worst: unknown beats known, the larger error, a surface model beats bare earth. Layers
 * keep their order; a joined one stands at its first tile. All must have been placed over the same box.
 */
export function joinTiles(layers: readonly GroundLayer[]): GroundLayer[] {
  const groups: GroundLayer[][] = [];
  for (const layer of layers) {
    const group = groups.find(([first]) => onOneLattice(first, layer));
    if (group) group.push(layer);
    else groups.push([layer]);
  }
  return groups.map((group) => (group.length === 1 ? group[0] : join(group)));
}

function onOneLattice(a: GroundLayer, b: GroundLayer): boolean {
  if (a.info.crs !== b.info.crs) return false;
  const near = (from: number, to: number, step: number): boolean => {
    const cells = (to - from) / step;
    return Math.abs(cells - Math.round(cells)) < ON_LATTICE;
  };
  return (
    Math.abs(a.grid.stepX / b.grid.stepX - 1) < 1e-6 &&
    Math.abs(a.grid.stepY / b.grid.stepY - 1) < 1e-6 &&
    near(a.grid.x0, b.grid.x0, a.grid.stepX) &&
    near(a.grid.y0, b.grid.y0, a.grid.stepY)
  );
}

function join(tiles: readonly GroundLayer[]): GroundLayer {
  const { grid: base, fit: placed } = tiles[0];
  const { stepX, stepY } = base;
  const places = tiles.map(({ grid }) => ({
    left: Math.round((grid.x0 - base.x0) / stepX),
    top: Math.round((base.y0 - grid.y0) / stepY),
    grid,
  }));
  const left = Math.min(...places.map((place) => place.left));
  const top = Math.min(...places.map((place) => place.top));
  const width = Math.max(...places.map((place) => place.left + place.grid.width)) - left;
  const height = Math.max(...places.map((place) => place.top + place.grid.height)) - top;
  const double = tiles.some(({ grid }) => grid.data instanceof Float64Array);
  const data = double ? new Float64Array(width * height) : new Float32Array(width * height);
  data.fill(Number.NaN);
  for (const place of places) copy(place.grid, data, width, place.left - left, place.top - top);
  const fit = placed.slice();
  fit[0] -= left;
  fit[4] -= top;
  const grid = { width, height, data, x0: base.x0 + left * stepX, y0: base.y0 - top * stepY, stepX, stepY };
  return { info: worst(tiles.map(({ info }) => info)), grid, fit };
}

/** Cells with data go where there are none yet. */
function copy(from: Grid, to: Float32Array | Float64Array, width: number, left: number, top: number): void {
  for (let row = 0; row < from.height; row++) {
    const target = (top + row) * width + left;
    const source = row * from.width;
    for (let col = 0; col < from.width; col++) {
      if (Number.isNaN(to[target + col])) to[target + col] = from.data[source + col];
    }
  }
}

const kinds: readonly TerrainKind[] = ['surface', 'unknown', 'bare earth'];

function worst(infos: readonly SurfaceInfo[]): SurfaceInfo {
  const one = <T>(values: readonly T[]): T | null => (values.every((value) => value === values[0]) ? values[0] : null);
  const errors = infos.map((info) => info.verticalRmseM);
  return {
    ...infos[0],
    source: [...new Set(infos.map((info) => info.source))].join(', '),
    kind: kinds.find((kind) => infos.some((info) => info.kind === kind))!,
    cellM: Math.max(...infos.map((info) => info.cellM)),
    verticalUnitAssumed: infos.some((info) => info.verticalUnitAssumed),
    shiftAccuracyM: Math.max(...infos.map((info) => info.shiftAccuracyM ?? 0)) || null,
    verticalDatum: one(infos.map((info) => info.verticalDatum)),
    verticalRmseM: errors.includes(null) ? null : Math.max(...(errors as number[])),
    collectedOn: one(infos.map((info) => info.collectedOn)),
  };
}
