import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { pagePolicy } from '../../config/csp.mjs';
import { builtPage } from './built-page.ts';

export interface StoreServer {
  readonly url: string;
  /** Called with every report of the page. */
  onReport: (path: string, body: unknown) => void;
  close(): void;
}

/** Builds the bare page over the store and serves it on one port under the page's content security policy. */
export async function serveStorePage(): Promise<StoreServer> {
  const out = await builtPage('store', 'tests/browser/store-page.ts', {
    rolldownOptions: { output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' } },
  });
  const server = createServer((request, response) => {
    const path = request.url ?? '/';
    response.setHeader('Content-Security-Policy', pagePolicy);
    if (request.method === 'POST') {
      let body = '';
      request.on('data', (bytes) => {
        body += bytes;
      });
      request.on('end', () => {
        if (request.complete) made.onReport(path, JSON.parse(body));
        response.end();
      });
      return;
    }
    if (path === '/') {
      response.setHeader('Content-Type', 'text/html');
      response.end('<!doctype html><title>x</title><script type="module" src="/store.js"></script>');
      return;
    }
    response.setHeader('Content-Type', 'text/javascript');
    try {
      response.end(readFileSync(join(out, path)));
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const made: StoreServer = {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    onReport: () => undefined,
    close: () => {
      server.closeAllConnections();
      server.close();
    },
  };
  return made;
}
