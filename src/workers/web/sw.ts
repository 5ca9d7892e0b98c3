// Entry of the service worker: keeps the app's own files so that both pages open without a network. It imports nothing at run time.
// A newer version waits until a person takes it; the files of the version before stay for the windows that still run it.
import type { COUNT_WINDOWS, TAKE_OVER } from '../../io/offline/index.ts';

interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Extendable {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: {
    matchAll(options: { type: 'window'; includeUncontrolled: boolean }): Promise<readonly unknown[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: Extendable) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent & Extendable) => void): void;
}

/** The build puts the list of files here, each with the start of its SHA-256: path → revision. */
const FILES = JSON.parse('__BRINKBOOK_FILES__') as Readonly<Record<string, string>>;
const VERSION = '__BRINKBOOK_VERSION__';
const scope = self as unknown as Scope;
/** Path of the folder in which the app is served, without its last slash: paths of FILES follow it. */
const folder = new URL(scope.registration.scope).pathname.replace(/\/$/, '');
/** Apps in other folders of the host keep theirs under names of their own. */
const SHELL = folder === '' ? 'brinkbook-app-' : `brinkbook-app ${folder}/ `;
const own = `${SHELL}${VERSION}`;
const takeOver: typeof TAKE_OVER = 'take over';
const countWindows: typeof COUNT_WINDOWS = 'count windows';

scope.addEventListener('install', (event) => event.waitUntil(keepFiles()));
scope.addEventListener('activate', (event) => event.waitUntil(dropOld()));
scope.addEventListener('message', (event) => {
  if (event.data === takeOver) event.waitUntil(scope.skipWaiting());
  if (event.data === countWindows) event.waitUntil(answerCount(event.ports[0]!));
});
scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  // Parts of files are read past the cache, which knows only whole ones.
  if (request.method !== 'GET' || origin !== location.origin || request.headers.has('range')) return;
  if (!pathname.startsWith(`${folder}/`)) return;
  const inFolder = pathname.slice(folder.length);
  // Without its last slash the page's own addresses would lead elsewhere.
  if (request.mode === 'navigate' && inFolder === '/call' && '/call/index.html' in FILES) {
    return event.respondWith(Promise.resolve(Response.redirect(`${folder}/call/`)));
  }
  const path = request.mode === 'navigate' ? pageFor(inFolder) : inFolder;
  if (path !== null && (path in FILES || path.startsWith('/assets/'))) event.respondWith(kept(path, event));
});

/** The page that an address opens; null for a file that is no page of the app. */
function pageFor(path: string): string | null {
  if (/^\/call\/(index\.html)?$/.test(path)) return '/call/index.html';
  return path === '/' || path === '/index.html' ? '/index.html' : null;
}

/** Whole or not at all: a file that does not come as this version has it fails the installation, and the version before goes on. */
async function keepFiles(): Promise<void> {
  const cache = await caches.open(own);
  await Promise.all(
    Object.entries(FILES).map(async ([path, revision]) => {
      const before = await caches.match(folder + path);
      if (before?.headers.get('x-revision') === revision) return cache.put(folder + path, before);
      const answer = await fetch(folder + path, { cache: 'no-cache' });
      const bytes = await answer.arrayBuffer();
      if (!answer.ok || (await revisionOf(bytes)) !== revision) throw new Error(`${path} is not of this version.`);
      const headers = new Headers(answer.headers);
      headers.set('x-revision', revision);
      headers.delete('content-encoding');
      headers.delete('content-length');
      return cache.put(folder + path, new Response(bytes, { headers }));
    }),
  );
}

/** The start of the SHA-256 of a file, as the build writes it. */
async function revisionOf(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest.subarray(0, 6), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Keeps this version and the one before it, whose windows may still ask for their parts. */
async function dropOld(): Promise<void> {
  const shells = (await caches.keys()).filter((name) => name.startsWith(SHELL) && name !== own);
  await Promise.all(shells.slice(0, -1).map((name) => caches.delete(name)));
}

/** A page comes out of this version alone; its parts may be those of a version that a window still runs. */
async function kept(path: string, event: Fetching): Promise<Response> {
  const found = await (await caches.open(own)).match(folder + path);
  if (found) return found;
  const older = path.startsWith('/assets/') ? await caches.match(folder + path) : undefined;
  if (older) return older;
  // The browser has cleared the cache: the files are kept again, if the server still has this version.
  if (path in FILES) event.waitUntil(keepFiles().catch(() => {}));
  return fetch(event.request);
}

async function answerCount(port: MessagePort): Promise<void> {
  const windows = await scope.clients.matchAll({ type: 'window', includeUncontrolled: true });
  port.postMessage(windows.length);
}
