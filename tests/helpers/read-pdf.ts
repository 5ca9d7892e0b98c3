import { Worker } from 'node:worker_threads';

/** One stroked piece of a path on a printed page, its length and its two ends in millimetres from the lower left. */
export interface Stroke {
  readonly lengthMm: number;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

export interface PdfPage {
  readonly text: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly strokes: readonly Stroke[];
}

/**
 * Every page of a PDF: its text, its size and its solid strokes. Curves count as their chords, dashed lines are no strokes. Read in a
 * thread of its own: the library changes what the language brings, and every later test of the worker would take three times as long.
 */
export const readPdf = (bytes: Uint8Array): Promise<PdfPage[]> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./read-pdf-worker.ts', import.meta.url), { workerData: bytes });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
