import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import sirv from 'sirv';
import { policyFor } from '../../../config/csp.mjs';
import { root } from '../app.ts';
import { builtPage } from '../built-page.ts';

export interface MapPage {
  readonly url: string;
  stop(): void;
}

const html =
  '<!doctype html><html lang="en"><head><title>Map</title><link rel="icon" href="data:,"><link rel="stylesheet" href="/page.css"><script type="module" src="/map.js"></script></head>' +
  '<body><div id="map" class="map-view"></div></body></html>';
const css = 'html,body{height:100%;margin:0}#map{position:absolute;inset:0}';

/**
 * Builds the map with its worker and serves it on a page of its own over the demo district, under the program's own policy.
 * `more` answers further paths.
 */
export async function serveMapPage(
  more: (path: string, response: ServerResponse) => boolean = () => false,
): Promise<MapPage> {
  const out = await builtPage('map', 'tests/browser/map/page-entry.ts', {
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
    cssCodeSplit: false,
    rolldownOptions: {
      output: {
        entryFileNames: '[name].js',
        chunkFileNames: 'assets/[name]-[hash].js',
        assetFileNames: ({ names }) => (names[0]?.endsWith('.css') ? 'map.css' : 'assets/[name]-[hash][extname]'),
      },
    },
  });
  const built = sirv(out, { dev: true });
  const demo = sirv(join(root, 'data/demo'), { dev: true });
  const server: Server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://here').pathname;
    response.setHeader('Content-Security-Policy', policyFor(path));
    const own: Record<string, [string, string]> = {
      '/': ['text/html', html],
      '/page.css': ['text/css', `@import "/map.css";${css}`],
    };
    if (own[path]) {
      response.setHeader('Content-Type', own[path][0]);
      response.end(own[path][1]);
      return;
    }
    const miss = (): void => {
      response.writeHead(404).end();
    };
    if (more(path, response)) return;
    if (!path.startsWith('/demo/')) return built(request, response, miss);
    request.url = path.slice('/demo'.length);
    demo(request, response, miss);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`, stop: () => server.close() };
}
