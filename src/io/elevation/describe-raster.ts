import type { Crs } from '../../geo/index.ts';
import type { SurfaceInfo } from '../../terrain/index.ts';
import { METRES_PER, UserError } from '../../units/index.ts';
import type { ByteSource, DecodePool, ElevationOptions } from '../ports.ts';
import {
  checkLength,
  type Georeference,
  geoKeys,
  georeference,
  type HeightRule,
  type OpenedTiff,
  openTiff,
  type RasterMetadata,
  readMetadata,
} from '../tiff/index.ts';
import { cellSize } from './cell-size.ts';
import { rasterCrs } from './raster-crs.ts';
import { type RasterReader, rasterReader } from './raster-reader.ts';
import { surfaceFacts } from './surface-facts.ts';
import { verticalUnit } from './vertical-unit.ts';

const US_FOOT_M = METRES_PER['us-ft'];

/** What a raster says, filled in by what the user gave. */
export interface DescribedRaster {
  readonly tiff: OpenedTiff;
  readonly metadata: RasterMetadata;
  readonly place: Georeference;
  readonly crs: Crs;
  /** Stored numbers to metres. */
  readonly rule: HeightRule;
  /** The full resolution, heights in metres. */
  readonly full: RasterReader;
  readonly info: SurfaceInfo;
}

/** Reads a raster's directories and finds out where its cells lie and what its heights mean. Failures are `UserError`s. */
export async function describeRaster(
  source: ByteSource,
  options: ElevationOptions,
  pool: DecodePool,
  signal: AbortSignal | undefined,
): Promise<DescribedRaster> {
  const tiff = await openTiff(source, signal);
  const image = tiff.images[0];
  const keys = geoKeys(image, source.name);
  const metadata = await readMetadata(image, source.name);
  const place = georeference(image, keys, source.name);
  const crs = await rasterCrs(keys, options.crs, place, source.name);
  const unit = verticalUnit(
    {
      unitCode: keys.VerticalUnitsGeoKey || null,
      ofVerticalCrs: crs.vertical?.unit ?? null,
      unitType: metadata.unitType,
      horizontalInFeet: inFeet(crs),
    },
    options.verticalUnit,
    source.name,
  );
  const metres = METRES_PER[unit.unit];
  const { noData, scale, offset } = metadata.rule;
  const rule = { noData, scale: scale * metres, offset: offset * metres };
  const full = await rasterReader(source, tiff, 0, place, rule, pool);
  await checkLengths(tiff, source, signal);
  const info: SurfaceInfo = {
    source: source.name,
    crs: crs.text,
    cellM: cellSize(place, crs, full.image.width / 2, full.image.height / 2),
    verticalUnit: unit.unit,
    verticalUnitAssumed: unit.assumed,
    verticalDatum: crs.vertical?.datum ?? null,
    shiftAccuracyM: crs.shiftAccuracyM,
    ...surfaceFacts(metadata.items, options, source.name),
  };
  return { tiff, metadata, place, crs, rule, full, info };
}

/** Refuses a file that was cut off, before anybody plans on the part that is there. */
async function checkLengths(
  { images: [full, ...overviews] }: OpenedTiff,
  source: ByteSource,
  signal?: AbortSignal,
): Promise<void> {
  const bytes = await source.size(signal);
  await checkLength(full!, bytes, source.name);
  for (const image of overviews) {
    await checkLength(image, bytes, source.name).catch((error) => {
      // What else is wrong with an overview is told where the map wants it: nothing is measured from it.
      if (error instanceof UserError && error.code === 'truncated') throw error;
    });
  }
}

/** International and US survey foot alike. */
const inFeet = ({ unitM }: Crs): boolean => unitM !== null && Math.abs(unitM - US_FOOT_M) < 1e-5;
