import { createHash } from 'node:crypto';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import sirv from 'sirv';
import { policyFor } from '../../config/csp.mjs';
import { demoBook, wholeBookFile } from '../helpers/demo-book.ts';
import { root, startApp } from './app.ts';

/** The built app on a server of the test's own: it can go away, come back, serve another version and few sites. */
export interface CallServer {
  readonly url: string;
  /** Stops answering, as a device that has left the network sees it; the port stays its own. */
  leave(): Promise<void>;
  comeBack(): Promise<void>;
  /** Serves a second version from now on: its pages say so, and `gone`, a part of the first version, is no longer there. */
  update(gone: RegExp): void;
  stop(): Promise<void>;
}

const SITES = ['kettle-bend', 'third-culvert', 'broken-shelf'];

/** Copies the build to `folder` and serves it with the demo district cut down to three sites. */
export async function callServer(folder: string): Promise<CallServer> {
  const app = await startApp();
  await app.stop();
  cpSync(join(root, 'dist'), folder, { recursive: true });
  const book = await demoBook();
  const sites = book.tables.sites.filter(({ id }) => SITES.includes(id));
  const few = await wholeBookFile({ ...book, tables: { ...book.tables, sites } });
  let gone: RegExp | null = null;
  let server: Server;
  const setHeaders = (response: { setHeader(name: string, value: string): void }, path: string): void => {
    response.setHeader('Content-Security-Policy', policyFor(path));
    response.setHeader('Cache-Control', 'no-store');
  };
  const files = sirv(folder, { dev: true, etag: true, setHeaders });
  const demo = sirv(join(root, 'data/demo'), { dev: true, etag: true, setHeaders });
  const listen = (port: number): Promise<void> => {
    server = createServer((request, response) => {
      const miss = (): void => void response.writeHead(404).end();
      const path = request.url!.split('?')[0]!;
      if (gone?.test(path)) return miss();
      if (path === '/demo/tamarrow.brinkbook') return void response.setHeader('etag', '"few"').end(few);
      if (!path.startsWith('/demo/')) return files(request, response, miss);
      request.url = request.url!.slice('/demo'.length);
      return demo(request, response, miss);
    });
    return new Promise((done) => server.listen(port, '127.0.0.1', done));
  };
  await listen(0);
  const { port } = server!.address() as AddressInfo;
  const stop = (): Promise<void> =>
    new Promise((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return {
    url: `http://127.0.0.1:${port}`,
    leave: stop,
    comeBack: () => listen(port),
    stop,
    update(part) {
      for (const page of ['index.html', 'call/index.html']) {
        const path = join(folder, page);
        writeFileSync(path, readFileSync(path, 'utf8').replace('<html ', '<html data-version="2" '));
      }
      const worker = join(folder, 'sw.js');
      const code = readFileSync(worker, 'utf8');
      const next = code
        .replace(/`[0-9a-f]{12}`/, '`000000000002`')
        .replace(
          /("\/((?:call\/)?index\.html)":")[0-9a-f]{12}/g,
          (_, head, page) => head + revisionOf(join(folder, page)),
        )
        .replace(new RegExp(`,"[^"]*${part.source}[^"]*":"[0-9a-f]{12}"`), '');
      if (!next.includes('`000000000002`') || part.test(next)) throw new Error('The second version is the first one.');
      writeFileSync(worker, next);
      gone = part;
    },
  };
}

/** As the build writes it. */
const revisionOf = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('hex').slice(0, 12);
