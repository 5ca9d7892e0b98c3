import { UserError } from '../../units/index.ts';
import type { CallPack } from '../offline/index.ts';
import type { ElevationOptions } from '../ports.ts';

/** What was left out of a publication because nobody asked for it: counts. */
export interface PublishedWithout {
  readonly crashes: number;
  readonly patientPhotos: number;
  /** Photos that show a number plate, or that nobody has looked at for plates. */
  readonly platePhotos: number;
}

/** A site that could not be worked out, and why: one sentence. */
export interface NotWorkedOut {
  readonly id: string;
  readonly why: string;
}

/** The list of a published folder. Paths are relative to the folder. */
export interface Publication {
  readonly schema: 'brinkbook/publication@1';
  readonly pack: CallPack;
  /** Stem of a site's file names, by its id. */
  readonly stems: Readonly<Record<string, string>>;
  readonly notWorkedOut: readonly NotWorkedOut[];
  readonly elevation: readonly { readonly file: string; readonly options: ElevationOptions }[];
  /** Ground is there this far around each site, metres each way. */
  readonly groundHalfM: number;
  readonly without: PublishedWithout;
}

/** Where the parts lie in the folder. */
export const publishedPaths = {
  publication: 'data/publication.json',
  book: 'data/book.json',
  roads: 'data/roads.geojson',
  elevation: (name: string): string => `data/elevation/${name}.tif`,
  study: (stem: string, weather: string): string => `data/studies/${stem}-${weather}.json.gz`,
  photo: (hash: string): string => `data/photos/${hash}`,
  sheet: (stem: string): string => `sheets/${stem}.html`,
  sheets: 'sheets/all-sheets.html',
} as const;

/** Everybody who publishes and everybody who reads is told this. */
export const READABLE_BY_ANYONE = 'Anyone with the address can read it.';

/** The name under which the call page is told where its publication lies. */
export const PUBLISHED_META = 'brinkbook-published';

/** Reads the list; throws `UserError` for anything else. */
export function readPublication(text: string, name: string): Publication {
  let found: Partial<Publication> | null = null;
  try {
    found = JSON.parse(text);
  } catch {
    // Told below with everything else that is no such list.
  }
  if (found?.schema !== 'brinkbook/publication@1' || found.pack?.schema !== 'brinkbook/call@1') {
    throw new UserError(
      'publication',
      `${name} is no list of a published folder that this program reads; publish the book again.`,
    );
  }
  return found as Publication;
}
