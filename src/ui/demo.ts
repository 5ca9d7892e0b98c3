import { appFolder } from '../io/offline/index.ts';
import type { DistrictFiles } from '../workers/index.ts';

const file = (name: string): string => new URL(`demo/${name}`, appFolder()).href;

/** Where the demo district's ground and roads are served from, beside the app. */
export const demoFiles = (): DistrictFiles => ({
  elevation: [file('elevation-1m.tif'), file('elevation-10m.tif')],
  options: {},
  roads: file('roads.geojson'),
  marks: null,
});

/** The book file that the demo begins with on a device. */
export const demoBookFile = (): string => file('tamarrow.brinkbook');

/** What names the files of the demo as they are served now, its book among them. */
export const demoStateFile = (): string => file('book.sha256');
