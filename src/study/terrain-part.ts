import { type Ground, isScreeningOnly, layerAt, type SurfaceInfo } from '../terrain/index.ts';
import type { StudyTerrain, StudyTerrainSource } from './study.ts';

/** Indices of the layers that answer at the given points (x, y pairs, metres), ascending: finest first. */
export function layersUsed(ground: Ground, points: ArrayLike<number>): number[] {
  const used = new Set<number>();
  for (let i = 0; i + 1 < points.length; i += 2) {
    const layer = layerAt(ground, points[i], points[i + 1]);
    if (layer >= 0) used.add(layer);
  }
  return [...used].sort((a, b) => a - b);
}

/** The coarsest of the layers used: it decides what the study may say. */
export function coarsest(ground: Ground, used: readonly number[]): SurfaceInfo {
  const infos = used.map((i) => ground.layers[i].info);
  const all = infos.length > 0 ? infos : ground.layers.map((layer) => layer.info);
  return all.reduce((worst, info) => (rank(info) > rank(worst) ? info : worst));
}

/** A surface model is worse than any cell size of bare earth, and so is ground that changed since. */
const rank = (info: SurfaceInfo): number => info.cellM + (info.kind === 'surface' || info.outdatedBy ? 1e6 : 0);

/** The contract's `terrain`: single fields are those of the coarsest source used. */
export function terrainPart(ground: Ground, used: readonly number[]): StudyTerrain {
  const info = coarsest(ground, used);
  return {
    ...sourcePart(info),
    kind: info.kind,
    collectedOn: info.collectedOn,
    screeningOnly: isScreeningOnly(info),
    outdatedBy: info.outdatedBy ?? null,
    sources: used.map((i) => sourcePart(ground.layers[i].info)),
  };
}

const sourcePart = ({ source, crs, cellM, verticalRmseM }: SurfaceInfo): StudyTerrainSource => ({
  source,
  crs,
  cellM: Math.round(cellM * 1000) / 1000,
  verticalRmseM,
});
