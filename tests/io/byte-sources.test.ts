import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openElevation } from '../../src/io/elevation/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { fileSource, writeGeoTiff } from '../../src/io/node/index.ts';
import type { ByteSource } from '../../src/io/ports.ts';
import { blobSource } from '../../src/io/web/index.ts';
import { UserError } from '../../src/units/index.ts';

const folder = mkdtempSync(join(tmpdir(), 'brinkbook-sources-'));
afterAll(() => rmSync(folder, { recursive: true }));
const bytes = Uint8Array.from({ length: 1000 }, (_, i) => i % 251);
const path = join(folder, 'bytes.bin');
writeFileSync(path, bytes);

describe.each<[string, () => ByteSource]>([
  ['a file', () => fileSource(path)],
  ['a blob', () => blobSource(new Blob([bytes]), 'bytes.bin')],
  ['memory', () => memorySource(bytes, 'bytes.bin')],
])('bytes of %s', (_, make) => {
  it('come as asked, in a buffer of their own, shorter only at the end', async () => {
    const source = make();
    const part = await source.read(10, 20);
    expect([...new Uint8Array(part)]).toEqual([...bytes.subarray(10, 30)]);
    new Uint8Array(part).fill(0);
    expect(new Uint8Array(await source.read(10, 1))[0]).toBe(10);
    expect((await source.read(990, 50)).byteLength).toBe(10);
    expect((await source.read(2000, 50)).byteLength).toBe(0);
    expect(await source.size()).toBe(1000);
    await source.close?.();
  });

  it('are not read once the signal is aborted', async () => {
    const source = make();
    await expect(source.read(0, 10, AbortSignal.abort(new Error('enough')))).rejects.toThrow('enough');
    await source.close?.();
  });
});

describe('a file that cannot be read', () => {
  it('is named with its reason', async () => {
    const missing = join(folder, 'missing.tif');
    await expect(openElevation(fileSource(missing))).rejects.toThrow(
      `${missing} cannot be read: there is no such file; check the path.`,
    );
    await expect(fileSource(folder).read(0, 10)).rejects.toThrow(
      `${folder} cannot be read: it is a folder; check the path.`,
    );
    await expect(fileSource(missing).read(0, 10)).rejects.toBeInstanceOf(UserError);
  });

  it('can be closed before it was opened, and opened again after', async () => {
    const source = fileSource(path);
    await source.close?.();
    expect((await source.read(0, 5)).byteLength).toBe(5);
    await source.close?.();
    expect((await source.read(0, 5)).byteLength).toBe(5);
    await source.close?.();
  });

  it('is told to be cut off before anything is read of it', async () => {
    const cut = join(folder, 'cut.tif');
    const data = Float32Array.from({ length: 512 * 512 }, (_, i) => 700 + Math.sin(i) * 5);
    await writeGeoTiff(
      cut,
      { width: 512, height: 512, data, x0: 580000.5, y0: 4871999.5, stepX: 1, stepY: 1 },
      { epsg: 32609, noData: -9999, smallestOverview: Number.POSITIVE_INFINITY },
    );
    truncateSync(cut, 300_000);
    await expect(openElevation(fileSource(cut))).rejects.toThrow(
      /cut\.tif ends at byte 300000 where its directory promises \d+: it is cut off; copy or download it again\./,
    );
  });
});
