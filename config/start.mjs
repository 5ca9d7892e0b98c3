// npm start: makes the demo district when it is missing, builds when the sources are newer, serves on this machine alone.
import { createServer } from 'node:http';
import { join } from 'node:path';
import sirv from 'sirv';
import { dist } from './build-app.mjs';
import { root } from './bundle.mjs';
import { policyFor } from './csp.mjs';
import { prepared } from './prepare.mjs';

const FIRST_PORT = 4180;

if (!(await prepared())) process.exit(1);
const server = createServer(answer());
listen(process.env.PORT ? Number(process.env.PORT) : FIRST_PORT);
for (const signal of ['SIGINT', 'SIGTERM']) {
  process.once(signal, () => {
    server.close(() => process.exit(0));
    server.closeAllConnections();
  });
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
