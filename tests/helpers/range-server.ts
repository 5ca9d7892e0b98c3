import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What one request asked and got. */
export interface Served {
  readonly range: string | null;
  readonly status: number;
  readonly bytes: number;
}

/** How the server behaves; it can be changed between requests. */
export interface Manners {
  /** Answers ranges with 206; otherwise the whole file with 200. */
  ranges: boolean;
  /** Answers everything with this status instead. */
  status: number | null;
  /** Leaves Content-Length out, as chunked answers do. */
  chunked: boolean;
  etag: string | null;
  /** Never answers. */
  silent: boolean;
  /** Sends only this share of a body and breaks off. */
  share: number;
  /** Sends a range from this many bytes further on than was asked. */
  shift: number;
}

/** A local HTTP server with one file, which notes every request. */
export async function rangeServer(file: Uint8Array) {
  const log: Served[] = [];
  const plain: Manners = { ranges: true, status: null, chunked: false, etag: '"1"', silent: false, share: 1, shift: 0 };
  const manners = { ...plain };
  const waiting = new Set<ServerResponse>();
  let aborted = 0;
  const server = createServer((request: IncomingMessage, response: ServerResponse) => {
    const range = request.headers.range ?? null;
    response.on('close', () => {
      if (!response.writableFinished) aborted++;
    });
    if (manners.silent) {
      waiting.add(response);
      log.push({ range, status: 0, bytes: 0 });
      return;
    }
    if (manners.status !== null) {
      log.push({ range, status: manners.status, bytes: 0 });
      response.writeHead(manners.status).end();
      return;
    }
    const asked = manners.ranges ? /bytes=(\d+)-(\d+)/.exec(range ?? '') : null;
    if (!asked) {
      log.push({ range, status: 200, bytes: file.length });
      response.writeHead(200, manners.chunked ? {} : { 'Content-Length': file.length });
      response.write(file.subarray(0, 1));
      response.end(file.subarray(1));
      return;
    }
    const from = Number(asked[1]) + manners.shift;
    const to = Math.min(Number(asked[2]) + manners.shift, file.length - 1);
    if (from >= file.length) {
      log.push({ range, status: 416, bytes: 0 });
      response.writeHead(416, { 'Content-Range': `bytes */${file.length}` }).end();
      return;
    }
    const body = file.subarray(from, to + 1);
    log.push({ range, status: 206, bytes: body.length });
    response.writeHead(206, {
      'Content-Range': `bytes ${from}-${to}/${file.length}`,
      'Content-Length': body.length,
      ...(manners.etag ? { ETag: manners.etag } : {}),
    });
    if (manners.share === 1) response.end(body);
    else response.write(body.subarray(0, Math.floor(body.length * manners.share)), () => response.destroy());
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/ground.tif`,
    port,
    log,
    manners,
    aborted: () => aborted,
    reset() {
      Object.assign(manners, plain);
      log.length = 0;
    },
    async close() {
      for (const response of waiting) response.destroy();
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
}
