import { UserError } from '../../units/index.ts';
import type { ByteSource } from '../ports.ts';
import { checkAnswer } from './check-answer.ts';

/** Up to this size a file is read whole where its server cannot send parts, bytes (a judgement: some seconds of loading). */
export const WHOLE_FILE_LIMIT = 32 * 1024 * 1024;

export interface UrlSourceOptions {
  /** `fetch` of another kind, for tests. */
  readonly fetch?: typeof fetch;
  readonly wholeFileLimit?: number;
}

/**
 * A file behind an http or https address, read by range requests (RFC 9110, section 14). A server that answers with the
 * whole file is taken at its word where the file is small; otherwise `UserError`. So are refusals (with their HTTP status),
 * unreachable addresses and files that change while they are read. [source: rfc9110]
 */
export function urlSource(url: string, options: UrlSourceOptions = {}): ByteSource {
  const ask = options.fetch ?? fetch;
  const limit = options.wholeFileLimit ?? WHOLE_FILE_LIMIT;
  let total: number | null = null;
  let version: string | null = null;
  let whole: Promise<ArrayBuffer> | null = null;

  async function read(offset: number, length: number, signal?: AbortSignal): Promise<ArrayBuffer> {
    if (length <= 0 || (total !== null && offset >= total)) return new ArrayBuffer(0);
    if (whole) return (await whole).slice(offset, offset + length);
    // Whoever answers in between, a service worker or a proxy, may end one answer early; a second such one is told.
    const first = await part(offset, length, signal);
    const { bytes, expected } = isShort(first) ? await part(offset, length, signal) : first;
    if (!isShort({ bytes, expected })) return bytes;
    throw new UserError(
      'cut-off',
      `${url} sent ${bytes.byteLength} bytes where ${expected} were asked for; try again.`,
    );
  }

  const isShort = ({ bytes, expected }: Part): boolean => bytes.byteLength < expected;

  /** What one answer brings. */
  async function part(offset: number, length: number, signal?: AbortSignal): Promise<Part> {
    const answer = await send(offset, length, signal);
    if (answer.status === 416) {
      total = totalOf(answer) ?? total;
      await answer.body?.cancel();
      return { bytes: new ArrayBuffer(0), expected: 0 };
    }
    await checkAnswer(answer, url);
    if (answer.status !== 206) {
      whole ??= readWhole(answer, signal);
      return { bytes: (await whole).slice(offset, offset + length), expected: 0 };
    }
    total = totalOf(answer) ?? total;
    checkVersion(answer);
    checkStart(answer, offset);
    const bytes = await body(answer, signal);
    const expected = total === null ? bytes.byteLength : Math.min(length, total - offset);
    return { bytes: bytes.byteLength > length ? bytes.slice(0, length) : bytes, expected };
  }

  async function send(offset: number, length: number, signal?: AbortSignal): Promise<Response> {
    try {
      return await ask(url, {
        headers: { Range: `bytes=${offset}-${offset + length - 1}` },
        ...(signal ? { signal } : {}),
      });
    } catch (cause) {
      signal?.throwIfAborted();
      throw new UserError(
        'unreachable',
        `${url} cannot be reached, or its server does not let this page read it; check the address, or download the file and open it from disk.`,
        { cause },
      );
    }
  }

  /** The file as a server sends it that knows no ranges; too large a file is refused before its body is read. */
  async function readWhole(answer: Response, signal?: AbortSignal): Promise<ArrayBuffer> {
    const size = Number(answer.headers.get('content-length') ?? Number.NaN);
    if (!(size <= limit)) {
      await answer.body?.cancel();
      whole = null;
      const much = Number.isFinite(size) ? `${Math.round(size / 1024 / 1024)} MB` : 'of unknown size';
      throw new UserError(
        'no-ranges',
        `The server of ${url} sends only the whole file (${much}), not parts of it; download it and open it from disk.`,
      );
    }
    try {
      const bytes = await body(answer, signal);
      total = bytes.byteLength;
      return bytes;
    } catch (cause) {
      whole = null;
      throw cause;
    }
  }

  async function body(answer: Response, signal?: AbortSignal): Promise<ArrayBuffer> {
    try {
      const bytes = await answer.arrayBuffer();
      // Behind a service worker a reading that was given up may end as an empty one.
      signal?.throwIfAborted();
      return bytes;
    } catch (cause) {
      signal?.throwIfAborted();
      throw new UserError('cut-off', `The connection to ${url} broke off while it was read; try again.`, { cause });
    }
  }

  /** Parts of two versions of a file make no file. */
  function checkVersion(answer: Response): void {
    const now = answer.headers.get('etag') ?? answer.headers.get('last-modified');
    if (now !== null && version !== null && now !== version) {
      throw new UserError('changed', `${url} changed on its server while it was read; open it again.`);
    }
    version ??= now;
  }

  function checkStart(answer: Response, offset: number): void {
    const start = /bytes\s+(\d+)-/.exec(answer.headers.get('content-range') ?? '')?.[1];
    if (start !== undefined && Number(start) !== offset) {
      throw new UserError(
        'no-ranges',
        `The server of ${url} sent bytes from ${start} where ${offset} was asked for; download the file and open it from disk.`,
      );
    }
  }

  return { name: url, read, size: async () => total };
}

interface Part {
  readonly bytes: ArrayBuffer;
  /** How many bytes the file has there, as far as its server says. */
  readonly expected: number;
}

/** Total size that a Content-Range names, or null; browsers hide the header where the server does not expose it. */
function totalOf(answer: Response): number | null {
  const size = /\/(\d+)\s*$/.exec(answer.headers.get('content-range') ?? '')?.[1];
  return size === undefined ? null : Number(size);
}
