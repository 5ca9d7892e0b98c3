// npm start: makes the demo district when it is missing, builds when the sources are newer, serves on this machine alone.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import sirv from 'sirv';
import { root } from './bundle.mjs';
import { policyFor } from './csp.mjs';

const FIRST_PORT = 4180;
const dist = join(root, 'dist');

run([join(root, 'config/demo.mjs')], 'The demo district could not be made; see the lines above.');
if (isStale()) build();
const server = createServer(answer());
listen(process.env.PORT ? Number(process.env.PORT) : FIRST_PORT);
for (const signal of ['SIGINT', 'SIGTERM']) {
  process.once(signal, () => {
    server.close(() => process.exit(0));
    server.closeAllConnections();
  });
}

function run(args, failure) {
  if (spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' }).status === 0) return;
  console.error(failure);
  process.exit(1);
}

/** Builds beside and then puts in place, so that the app is there whole whoever else starts or looks at the same time. */
function build() {
  console.log('Building the app …');
  const part = join(root, `node_modules/.cache/brinkbook/dist-${process.pid}`);
  run(
    [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn', '--outDir', part],
    'The app could not be built; see the lines above.',
  );
  rmSync(dist, { recursive: true, force: true });
  try {
    renameSync(part, dist);
  } catch (error) {
    // Another start put its own there in between.
    rmSync(part, { recursive: true, force: true });
    if (isStale()) throw error;
  }
}

/** True where the built app is missing or older than anything that it is built from. */
function isStale() {
  const built = join(dist, 'index.html');
  if (!existsSync(built)) return true;
  const inputs = ['src', 'public', 'config', 'vite.config.ts', 'package.json'].map((path) => newest(join(root, path)));
  return Math.max(...inputs) > statSync(built).mtimeMs;
}

function newest(path) {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

/** Built app and demo files, each answer under its policy; 404 on a miss, ranges for rasters. */
function answer() {
  const setHeaders = (response, path) => {
    response.setHeader('Content-Security-Policy', policyFor(path));
    response.setHeader('X-Content-Type-Options', 'nosniff');
    if (path.startsWith('/assets/')) response.setHeader('Cache-Control', 'public, max-age=31536000, immutable');
    if (path === '/sw.js') response.setHeader('Cache-Control', 'no-cache');
  };
  // Files are looked up at each request: a new build must not need a new start.
  const app = sirv(dist, { etag: true, dev: true, setHeaders });
  const demo = sirv(join(root, 'data/demo'), { etag: true, dev: true, setHeaders });
  return (request, response) => {
    const miss = () => {
      response.statusCode = 404;
      response.setHeader('Content-Security-Policy', policyFor(request.url));
      response.setHeader('Content-Type', 'text/plain; charset=utf-8');
      response.end(`Nothing is served at ${request.url}\n`);
    };
    if (!request.url.startsWith('/demo/')) return app(request, response, miss);
    request.url = request.url.slice('/demo'.length);
    return demo(request, response, miss);
  };
}

/** Listens on the loopback address, on the next free port where none was asked for. */
function listen(port) {
  server.once('error', (error) => {
    if (error.code === 'EADDRINUSE' && !process.env.PORT && port < FIRST_PORT + 50) return listen(port + 1);
    console.error(
      error.code === 'EADDRINUSE'
        ? `Port ${port} is taken; free it or set PORT to another one.`
        : `The server cannot start: ${error.message}`,
    );
    process.exit(1);
  });
  server.listen(port, '127.0.0.1', () => {
    server.removeAllListeners('error');
    console.log(`Brinkbook is at http://127.0.0.1:${server.address().port}`);
  });
}
