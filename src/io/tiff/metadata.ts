import type { GeoTIFFImage } from 'geotiff';
import { UserError } from '../../units/index.ts';
import type { HeightRule } from './raster-image.ts';

/** What a raster says of itself beside its position. */
export interface RasterMetadata {
  /** Items of the GDAL metadata by name, for the file as a whole. */
  readonly items: ReadonlyMap<string, string>;
  /** Unit of the heights in the words of the metadata, or null. */
  readonly unitType: string | null;
  readonly rule: HeightRule;
}

/** Reads the GDAL metadata and no-data tags. Throws `UserError` where a scale or the no-data number is no number. */
export async function readMetadata(image: GeoTIFFImage, source: string): Promise<RasterMetadata> {
  const items = textItems(await image.getGDALMetadata(null));
  const band = textItems(await image.getGDALMetadata(0));
  return {
    items,
    unitType: band.get('UNITTYPE') ?? null,
    rule: {
      noData: noData(image, source),
      scale: numberIn(band, 'SCALE', 1, source),
      offset: numberIn(band, 'OFFSET', 0, source),
    },
  };
}

function textItems(found: Record<string, unknown> | null): Map<string, string> {
  return new Map(Object.entries(found ?? {}).map(([name, text]) => [name, unescaped(String(text ?? '')).trim()]));
}

const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' };
const unescaped = (text: string): string =>
  text.replace(/&(lt|gt|quot|apos|amp);/g, (_, name: string) => entities[name]);

function numberIn(items: ReadonlyMap<string, string>, name: string, missing: number, source: string): number {
  const text = items.get(name);
  if (text === undefined) return missing;
  const value = Number(text);
  if (text !== '' && Number.isFinite(value)) return value;
  throw new UserError(
    'metadata',
    `${source} states ${name} "${text}" for its heights, which is no number; correct it.`,
  );
}

function noData(image: GeoTIFFImage, source: string): number | null {
  const text = image.fileDirectory.getValue('GDAL_NODATA')?.replace(/\0.*$/s, '').trim();
  if (!text) return null;
  if (/^[-+]?nan$/i.test(text)) return Number.NaN;
  const infinite = /^([-+])?inf(inity)?$/i.exec(text);
  const value = infinite ? (infinite[1] === '-' ? -Infinity : Infinity) : Number(text);
  if (Number.isNaN(value)) {
    throw new UserError('metadata', `${source} states the no-data number "${text}", which is no number; correct it.`);
  }
  return value;
}
