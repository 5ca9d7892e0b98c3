import { unzipSync } from 'fflate';
import { UserError } from '../../units/index.ts';
import { LARGEST_FILE } from './decode-text.ts';

/** True for a zip, which a KMZ is. */
export const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/**
 * The KML of a KMZ: its `doc.kml`, or the first KML at its top [source: kml22]. Nothing else of it is unpacked. Throws a `UserError` where
 * there is none, or it is damaged or too large.
 */
export function unpackKmz(bytes: Uint8Array, file: string): Uint8Array {
  let taken: string | null = null;
  let large = false;
  let entries: Record<string, Uint8Array>;
  try {
    entries = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!/^[^/\\]{1,100}\.kml$/i.test(name) || (taken !== null && name !== 'doc.kml')) return false;
        large = originalSize > LARGEST_FILE;
        if (large) return false;
        taken = name;
        return true;
      },
    });
  } catch {
    throw new UserError('kmz', `${file} is damaged or no KMZ; export it again as KML.`);
  }
  const kml = taken === null || !Object.hasOwn(entries, taken) ? undefined : entries[taken];
  if (kml) return kml;
  const why = large
    ? `unpacks to more than the ${LARGEST_FILE} bytes that are read`
    : 'is a zip without a KML file in it';
  throw new UserError('kmz', `${file} ${why}; export it again as KML.`);
}
