import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { publishFolder } from '../../../src/io/node/index.ts';

let base: string;
let out: string;
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'brinkbook-folder-'));
  out = join(base, 'out');
});
afterEach(() => rmSync(base, { recursive: true }));

async function publishOnce(text: string, place = out): Promise<void> {
  const folder = await publishFolder(place);
  await folder.write('index.html', text);
  await folder.write('data/elevation/a.tif', text);
  await folder.finish();
}

test('is there whole or not at all', async () => {
  const folder = await publishFolder(out);
  await folder.write('index.html', 'one');
  expect(existsSync(out)).toBe(false);
  await folder.drop();
  expect(readdirSync(base)).toEqual([]);
  await publishOnce('one');
  expect(readdirSync(base)).toEqual(['out']);
  expect(readdirSync(out).sort()).toEqual(['brinkbook-published.json', 'data', 'index.html']);
});

test('an empty folder and a former publication are taken, the latter replaced whole', async () => {
  mkdirSync(out);
  await publishOnce('one');
  const folder = await publishFolder(out);
  await folder.write('index.html', 'two');
  expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('one');
  await folder.finish();
  expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('two');
  expect(existsSync(join(out, 'data'))).toBe(false);
  expect(readdirSync(base)).toEqual(['out']);
});

test('anything else is refused and stays as it was, also what appears meanwhile', async () => {
  mkdirSync(out);
  writeFileSync(join(out, 'thesis.txt'), 'mine');
  await expect(publishFolder(out)).rejects.toThrow(/is not empty and was not written by this command/);
  writeFileSync(join(out, 'brinkbook-published.json'), '{"schema":"something else"}');
  await expect(publishFolder(out)).rejects.toThrow(/is not empty/);
  rmSync(out, { recursive: true });
  await publishOnce('one');
  const folder = await publishFolder(out);
  writeFileSync(join(out, 'thesis.txt'), 'mine');
  await expect(folder.finish()).rejects.toThrow(/also holds "thesis.txt"/);
  await folder.drop();
  expect(readFileSync(join(out, 'thesis.txt'), 'utf8')).toBe('mine');
  expect(readdirSync(base)).toEqual(['out']);
});

test('a link to a folder stays a link', async () => {
  const real = join(base, 'real');
  mkdirSync(real);
  symlinkSync(real, out);
  await publishOnce('one');
  expect(readFileSync(join(real, 'index.html'), 'utf8')).toBe('one');
  expect(readdirSync(base).sort()).toEqual(['out', 'real']);
});

test('an interrupt takes away what was written', async () => {
  const exit = vi.spyOn(process, 'exit').mockImplementation((() => {}) as never);
  try {
    const listeners = process.listenerCount('SIGINT');
    const folder = await publishFolder(out);
    await folder.write('index.html', 'half');
    process.emit('SIGINT', 'SIGINT');
    expect(readdirSync(base)).toEqual([]);
    expect(exit).toHaveBeenCalledWith(130);
    await folder.drop();
    expect(process.listenerCount('SIGINT')).toBe(listeners);
  } finally {
    exit.mockRestore();
  }
});
