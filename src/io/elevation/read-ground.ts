import { joinTiles } from '../../terrain/index.ts';
import type { ReadGround } from '../ports.ts';

/**
 * The ground within `halfSizeM` of `centre` (plane metres) out of any number of rasters, the finest first; rasters of equal
 * cells keep their order, tiles of one survey become one layer. Rasters that do not reach there are left out; none that does
 * gives a ground without layers.
 */
export const readGround: ReadGround = async (sources, plane, centre, halfSizeM, signal) => {
  const finestFirst = [...sources].sort((a, b) => a.info.cellM - b.info.cellM);
  const layers = await Promise.all(finestFirst.map((source) => source.readLayer(plane, centre, halfSizeM, signal)));
  return { plane, layers: joinTiles(layers.filter((layer) => layer !== null)) };
};
