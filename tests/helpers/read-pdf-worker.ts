import { parentPort, workerData } from 'node:worker_threads';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { PdfPage, Stroke } from './read-pdf.ts';

/** Millimetres of a point. */
const MM = 25.4 / 72;

type Matrix = readonly [number, number, number, number, number, number];

async function pagesOf(bytes: Uint8Array): Promise<PdfPage[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: true, verbosity: 0 }).promise;
  const pages: PdfPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    const { fnArray, argsArray } = await page.getOperatorList();
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = page.view;
    pages.push({ text, widthMm: (x1 - x0) * MM, heightMm: (y1 - y0) * MM, strokes: strokesOf(fnArray, argsArray) });
  }
  await document.loadingTask.destroy();
  return pages;
}

function strokesOf(calls: readonly number[], given: readonly unknown[]): Stroke[] {
  let at: Matrix = [1, 0, 0, 1, 0, 0];
  const saved: Matrix[] = [];
  const strokes: Stroke[] = [];
  calls.forEach((call, i) => {
    const args = given[i] as unknown[];
    if (call === OPS.save) saved.push(at);
    else if (call === OPS.restore) at = saved.pop() ?? at;
    else if (call === OPS.transform) at = product(at, args as unknown as Matrix);
    else if (call === OPS.constructPath && (args[0] === OPS.stroke || args[0] === OPS.closeStroke)) {
      const path = (args[1] as (Float32Array | null)[])[0];
      if (path) strokes.push(...pieces(path, at));
    }
  });
  return strokes;
}

/** Path codes of the reader: 0 move, 1 line, 2 cubic, 3 quadratic, 4 close. */
function pieces(path: Float32Array, [a, b, c, d, e, f]: Matrix): Stroke[] {
  const point = (k: number): [number, number] => {
    const [x, y] = [path[k]!, path[k + 1]!];
    return [(a * x + c * y + e) * MM, (b * x + d * y + f) * MM];
  };
  const list: Stroke[] = [];
  let from: [number, number] = [0, 0];
  let to = from;
  let length = 0;
  const end = (): void => {
    if (length > 0) list.push({ lengthMm: length, from, to });
    length = 0;
  };
  const line = (next: [number, number]): void => {
    length += Math.hypot(next[0] - to[0], next[1] - to[1]);
    to = next;
  };
  for (let k = 0; k < path.length; ) {
    const code = path[k++]!;
    if (code === 0) {
      end();
      from = point(k);
      to = from;
      k += 2;
    } else if (code === 4) line(from);
    else {
      k += code === 1 ? 2 : code === 2 ? 6 : 4;
      line(point(k - 2));
    }
  }
  end();
  return list;
}

const product = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

// Last: all that it uses is there.
parentPort!.postMessage(await pagesOf(workerData as Uint8Array));
