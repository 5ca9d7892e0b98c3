import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';

/** A plain static host: files under a path, parts of files, no header but those of a file server. */
export interface FolderServer {
  /** Address of the folder, ending in a slash. */
  readonly url: string;
  /** Paths that were asked for outside the folder, or are not in it. */
  readonly misses: readonly string[];
  /** Paths that were sent in parts. */
  readonly parts: ReadonlySet<string>;
  /** Stops answering; the port stays its own. */
  leave(): Promise<void>;
  comeBack(): Promise<void>;
  stop(): Promise<void>;
}

/** Serves a folder under `path`, such as "/x/y/". */
export async function folderServer(folder: string, path: string): Promise<FolderServer> {
  const misses: string[] = [];
  const parts = new Set<string>();
  const files = sirv(folder, { dev: true, etag: true });
  const server = createServer((request, response) => {
    const asked = request.url!;
    const miss = (): void => {
      misses.push(asked);
      response.writeHead(404).end();
    };
    if (!asked.startsWith(path)) return miss();
    request.url = asked.slice(path.length - 1);
    if (request.headers.range) parts.add(request.url);
    return files(request, response, miss);
  });
  const listen = (on: number): Promise<void> => new Promise((done) => server.listen(on, '127.0.0.1', done));
  await listen(0);
  const { port } = server.address() as AddressInfo;
  const stop = (): Promise<void> =>
    new Promise((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return { url: `http://127.0.0.1:${port}${path}`, misses, parts, leave: stop, comeBack: () => listen(port), stop };
}
