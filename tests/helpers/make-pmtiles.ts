/**
 * A PMTiles file of version 3 with one PNG tile at zoom 0, uncompressed directories. [source: pmtiles-spec]
 */
export function makePmtiles(png: Uint8Array, metadata: object): Uint8Array {
  const meta = new TextEncoder().encode(JSON.stringify(metadata));
  // One entry: tile 0, run of 1, its length, and its offset plus one.
  const directory = Uint8Array.from([...varint(1), ...varint(0), ...varint(1), ...varint(png.length), ...varint(1)]);
  const header = new Uint8Array(127);
  const view = new DataView(header.buffer);
  header.set(new TextEncoder().encode('PMTiles'));
  view.setUint8(7, 3);
  const put = (at: number, value: number): void => view.setBigUint64(at, BigInt(value), true);
  const metaAt = 127 + directory.length;
  const tileAt = metaAt + meta.length;
  put(8, 127);
  put(16, directory.length);
  put(24, metaAt);
  put(32, meta.length);
  put(40, tileAt);
  put(48, 0);
  put(56, tileAt);
  put(64, png.length);
  put(72, 1);
  put(80, 1);
  put(88, 1);
  view.setUint8(96, 1);
  view.setUint8(97, 1);
  view.setUint8(98, 1);
  view.setUint8(99, 2);
  view.setUint8(100, 0);
  view.setUint8(101, 0);
  [-1_800_000_000, -850_000_000, 1_800_000_000, 850_000_000].forEach((e7, i) => {
    view.setInt32(102 + 4 * i, e7, true);
  });
  return Uint8Array.from([...header, ...directory, ...meta, ...png]);
}

function varint(value: number): number[] {
  const bytes: number[] = [];
  let rest = value;
  while (rest > 127) {
    bytes.push((rest & 127) | 128);
    rest >>>= 7;
  }
  bytes.push(rest);
  return bytes;
}
