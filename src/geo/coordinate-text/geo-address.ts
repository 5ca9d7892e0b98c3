import { METRES_PER_DEGREE } from './bounds.ts';
import type { Candidate, Fault } from './reading.ts';

const GEO = /(?<![A-Z])GEO:(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)(?:,-?\d+(?:\.\d+)?)?((?:;[^\s;?]*)*)(\?[^\s]*)?/g;

/**
 * Positions in `geo:LAT,LON;crs=…;u=…` addresses of a tidy text [source: rfc5870]; `u` is the uncertainty in metres. The form
 * `geo:0,0?q=…`, whose position stands in the question, is left to the search of pairs.
 */
export function geoAddressesIn(tidy: string): (Candidate | Fault)[] {
  return [...tidy.matchAll(GEO)].flatMap((match): (Candidate | Fault)[] => {
    const [all, lat, lon, parameters = '', query] = match;
    if (query !== undefined && Number(lat) === 0 && Number(lon) === 0) return [];
    const crs = /;CRS=([^;]*)/.exec(parameters)?.[1];
    if (crs !== undefined && crs !== 'WGS84')
      return [{ fault: `is in the coordinate system ${crs}; give it in WGS 84` }];
    if (Math.abs(Number(lat)) > 90 || Math.abs(Number(lon)) > 180) return [{ fault: 'is not on the Earth' }];
    const digits = Math.min(lat!.split('.')[1]?.length ?? 0, lon!.split('.')[1]?.length ?? 0);
    const u = Number(/;U=(\d+(?:\.\d+)?)/.exec(parameters)?.[1] ?? 0);
    return [
      {
        position: { lon: Number(lon), lat: Number(lat) },
        withinM: Math.max(u, 0.5 * 10 ** -digits * METRES_PER_DEGREE),
        form: 'geo address',
        strong: true,
        whole: !/[A-Z\d]/.test(tidy.replace(all, '')),
        doubt: null,
      },
    ];
  });
}

/** The text without its geo addresses that were read, so that their numbers are not found a second time. */
export const withoutGeoAddresses = (tidy: string): string =>
  tidy.replace(GEO, (_all, lat: string, lon: string, _p: string, query: string | undefined) =>
    query !== undefined && Number(lat) === 0 && Number(lon) === 0 ? query : ' ',
  );
