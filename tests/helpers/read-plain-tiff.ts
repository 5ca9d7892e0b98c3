import { readFileSync } from 'node:fs';

/** Singles of an uncompressed, little-endian, classic TIFF in strips: a reader short enough to be seen to be right. */
export function readPlainTiff(path: string): Float32Array {
  const view = new DataView(new Uint8Array(readFileSync(path)).buffer);
  const directory = view.getUint32(4, true);
  const list = (tag: number): number[] => {
    for (let i = 0; i < view.getUint16(directory, true); i++) {
      const entry = directory + 2 + i * 12;
      if (view.getUint16(entry, true) !== tag) continue;
      const size = view.getUint16(entry + 2, true) === 3 ? 2 : 4;
      const count = view.getUint32(entry + 4, true);
      const start = count * size > 4 ? view.getUint32(entry + 8, true) : entry + 8;
      return Array.from({ length: count }, (_, k) =>
        size === 2 ? view.getUint16(start + 2 * k, true) : view.getUint32(start + 4 * k, true),
      );
    }
    throw new Error(`${path} has no tag ${tag}.`);
  };
  if (list(259)[0] !== 1) throw new Error(`${path} is compressed.`);
  const counts = list(279);
  const out: number[] = [];
  list(273).forEach((offset, strip) => {
    for (let at = offset; at < offset + counts[strip]; at += 4) out.push(view.getFloat32(at, true));
  });
  return Float32Array.from(out);
}
