import type { GeoTIFFImage } from 'geotiff';
import { UserError } from '../../units/index.ts';
import type { RasterKeys } from './geo-keys.ts';

/**
 * Where the cells of an image lie, in CRS units: (x0, y0) is the centre of the north-west cell, steps are positive. With
 * `southUp` the file's first row is the southernmost, so that row r of the grid is row height − 1 − r of the file.
 */
export interface Georeference {
  readonly x0: number;
  readonly y0: number;
  readonly stepX: number;
  readonly stepY: number;
  readonly southUp: boolean;
}

const PIXEL_IS_POINT = 2;
/** A turn smaller than this share of a cell side is rounding. */
const NO_TURN = 1e-9;

/**
 * Places an image by its tie point and cell size, or by its transformation matrix (OGC GeoTIFF 1.1, requirement class
 * "raster to model coordinate transformation"). A tie point names a cell's corner where cells are areas and its centre where
 * they are points. Throws `UserError` where the image has no place, is turned, mirrored, or leaves its direction open.
 * [source: geotiff11]
 */
export function georeference(image: GeoTIFFImage, keys: RasterKeys, source: string): Georeference {
  const directory = image.fileDirectory;
  const scale = directory.getValue('ModelPixelScale');
  const ties = directory.getValue('ModelTiepoint');
  const matrix = directory.getValue('ModelTransformation');
  // Absent, the key means area.
  const half = keys.GTRasterTypeGeoKey === PIXEL_IS_POINT ? 0 : 0.5;
  if (scale && ties && ties.length >= 6) return fromTie([...scale], [...ties], half, source);
  if (matrix) return fromMatrix([...matrix], half, image.getHeight(), source);
  if (ties && ties.length > 6) {
    throw new UserError(
      'control-points',
      `${source} is placed by control points; place its cells on a grid first, with "gdalwarp".`,
    );
  }
  throw new UserError(
    'no-place',
    `${source} does not say where it lies (no tie point, no matrix); give a GeoTIFF with its position.`,
  );
}

function fromTie(scale: number[], ties: number[], half: number, source: string): Georeference {
  const [stepX, stepY, stepZ = 0] = scale;
  const [i, j, , x, y] = ties;
  checkSteps(stepX, Math.abs(stepY), source);
  if (stepY < 0) {
    throw new UserError(
      'negative-step',
      `${source} has a negative cell height, which programs read in two ways; write it again with "gdalwarp", north up.`,
    );
  }
  if (stepZ !== 0 && stepZ !== 1) {
    throw new UserError(
      'height-scale',
      `${source} multiplies its heights by ${stepZ} in its tie point scale, which is not read here; write the heights out with "gdal_translate".`,
    );
  }
  return { x0: x + (half - i) * stepX, y0: y - (half - j) * stepY, stepX, stepY, southUp: false };
}

function fromMatrix(matrix: number[], half: number, height: number, source: string): Georeference {
  const [a, b, , x, d, e, , y] = matrix;
  if (Math.abs(b) > NO_TURN * Math.abs(a) || Math.abs(d) > NO_TURN * Math.abs(e)) {
    throw new UserError('turned', `${source} is turned against its grid; turn it north up first, with "gdalwarp".`);
  }
  checkSteps(a, Math.abs(e), source);
  const southUp = e > 0;
  const stepY = Math.abs(e);
  const firstRow = y + half * e;
  return { x0: x + half * a, y0: southUp ? firstRow + (height - 1) * stepY : firstRow, stepX: a, stepY, southUp };
}

function checkSteps(stepX: number, stepY: number, source: string): void {
  if (stepX > 0 && stepY > 0 && Number.isFinite(stepX) && Number.isFinite(stepY)) return;
  throw new UserError(
    'cell-size',
    `${source} has cells of ${stepX} × ${stepY}, which are mirrored or have no size; write it again with "gdalwarp".`,
  );
}

/** The place of an overview: the same outline in fewer cells. */
export function overviewOf(
  full: Georeference,
  size: { width: number; height: number },
  overview: { width: number; height: number },
): Georeference {
  const stepX = (full.stepX * size.width) / overview.width;
  const stepY = (full.stepY * size.height) / overview.height;
  return {
    x0: full.x0 + (stepX - full.stepX) / 2,
    y0: full.y0 - (stepY - full.stepY) / 2,
    stepX,
    stepY,
    southUp: full.southUp,
  };
}
