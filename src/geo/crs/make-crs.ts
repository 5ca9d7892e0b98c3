import proj4 from 'proj4';
import { FOOT_M, US_SURVEY_FOOT_M } from '../../units/index.ts';
import type { Crs } from './crs.ts';

const LONGLAT = '+proj=longlat +datum=WGS84 +no_defs';

/**
 * A system from a projection definition that the projection library reads (a "+proj=" text or WKT). Throws what the
 * library throws where it does not know the projection.
 */
export function makeCrs(definition: string, rest: Pick<Crs, 'text' | 'shiftAccuracyM' | 'vertical' | 'unitM'>): Crs {
  const projection = proj4(LONGLAT, definition);
  return {
    ...rest,
    fromLonLat: (lon, lat) => projection.forward([lon, lat]) as [number, number],
    toLonLat: (x, y) => projection.inverse([x, y]) as [number, number],
  };
}

/** Metres in one unit of a "+proj=" definition; null for degrees. */
export function unitOfDefinition(definition: string): number | null {
  if (/\+proj=(longlat|latlong)\b/.test(definition)) return null;
  const factor = /\+to_meter=(\S+)/.exec(definition)?.[1];
  if (factor) return Number(factor);
  const unit = /\+units=(\S+)/.exec(definition)?.[1];
  return unit === 'us-ft' ? US_SURVEY_FOOT_M : unit === 'ft' ? FOOT_M : 1;
}
