import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type RunningApp, root, startApp } from './app.ts';

let app: RunningApp;
beforeAll(async () => {
  app = await startApp();
}, 240_000);
afterAll(async () => {
  await app?.stop();
});

const strict = /default-src 'none'; script-src 'self'; style-src 'self'/;

test('every answer carries the strict policy, a miss too; only the decoding worker may compile', async () => {
  for (const path of ['/', '/demo/roads.geojson', '/nothing', '/assets/nothing.js', '/demo/nothing.tif']) {
    const policy = (await fetch(app.url + path)).headers.get('content-security-policy');
    expect(policy).toMatch(strict);
    expect(policy).not.toMatch(/unsafe/);
  }
  const assets = readdirSync(join(root, 'dist/assets')).filter((name) => name.endsWith('.js'));
  const wider: string[] = [];
  for (const name of assets) {
    const policy = (await fetch(`${app.url}/assets/${name}`)).headers.get('content-security-policy')!;
    if (policy.includes('wasm-unsafe-eval')) wider.push(name);
  }
  expect(assets.length).toBeGreaterThan(5);
  expect(wider).toEqual([expect.stringMatching(/^decode\.worker-/)]);
});

test('a miss is a 404 and says so, never the page', async () => {
  for (const path of ['/nothing.tif', '/demo/nothing.tif', '/package.json', '/demo/..%2f..%2fpackage.json']) {
    const answer = await fetch(app.url + path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).toMatch(/^Nothing is served at/);
  }
});

test('rasters are served in parts', async () => {
  const answer = await fetch(`${app.url}/demo/elevation-1m.tif`, { headers: { Range: 'bytes=0-1023' } });
  expect(answer.status).toBe(206);
  expect(answer.headers.get('content-range')).toMatch(/^bytes 0-1023\/\d+$/);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  // "II", 42: a little-endian TIFF.
  expect([bytes.length, ...bytes.subarray(0, 4)]).toEqual([1024, 0x49, 0x49, 42, 0]);
});

test('a port that was asked for and is taken is told in one sentence', () => {
  const port = new URL(app.url).port;
  const second = spawnSync(process.execPath, ['config/start.mjs'], {
    cwd: root,
    env: { ...process.env, PORT: port },
    encoding: 'utf8',
    timeout: 20_000,
  });
  expect(second.status).toBe(1);
  expect(second.stderr.trim().split('\n').at(-1)).toBe(`Port ${port} is taken; free it or set PORT to another one.`);
});
