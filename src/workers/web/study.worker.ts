import type { Port } from '../messages.ts';
import { serve } from '../serve.ts';
import { studyFunctions } from '../study-functions.ts';
import { webDecodePool } from './decode-pool.ts';
import { webOpener } from './opener.ts';

/** A map takes a tile as a bitmap; heights are coded in its colours, so nothing may touch them. */
const toBitmap = (rgba: Uint8ClampedArray<ArrayBuffer>, size: number): Promise<ImageBitmap> =>
  createImageBitmap(new ImageData(rgba, size, size), { premultiplyAlpha: 'none', colorSpaceConversion: 'none' });

// The study's own worker has two helpers, the map's one: a study must not wait for tiles.
const pool = webDecodePool(self.name === 'map' ? 1 : 2);
serve(studyFunctions(webOpener(pool), toBitmap), globalThis as unknown as Port);
