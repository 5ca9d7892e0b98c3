import { appFolder } from './app-folder.ts';

/** The app's own files on this device, and whether a newer version of them waits. */
export type ShellState =
  /** This browser or address cannot keep the app (no service worker, or not https). */
  | { readonly kind: 'none' }
  /** The files are on their way. */
  | { readonly kind: 'keeping' }
  /** The app opens without a network. */
  | { readonly kind: 'ready' }
  /** A newer version is there and waits; `others` windows run the present one and go on with it until they are reloaded. */
  | { readonly kind: 'waiting'; readonly others: number; readonly take: () => void }
  /** Another window took the newer version; this one goes on with the old until it is reloaded. */
  | { readonly kind: 'overtaken' }
  /** The files could not be kept. */
  | { readonly kind: 'failed'; readonly why: string };

/** What the page and its service worker say to each other. */
export const TAKE_OVER = 'take over';
export const COUNT_WINDOWS = 'count windows';

/** How often a page that stays open looks for a newer version, milliseconds. */
const LOOK_EVERY_MS = 60 * 60 * 1000;
/** It looks again when it comes back to the front, after this long at the soonest, milliseconds. */
const LOOK_AGAIN_MS = 10 * 60 * 1000;

/**
 * Registers the service worker and follows it. Nothing is ever reloaded but by `take`, which a person taps in this window: other
 * windows hear of it as "overtaken" and keep running.
 */
export async function followShell(hear: (state: ShellState) => void): Promise<void> {
  const { serviceWorker } = navigator as { serviceWorker?: ServiceWorkerContainer };
  if (!serviceWorker || !isSecureContext) return hear({ kind: 'none' });
  let asked = false;
  const ran = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (ran) hear({ kind: 'overtaken' });
  });
  try {
    hear({ kind: 'keeping' });
    const registration = await serviceWorker.register(new URL('sw.js', appFolder()), { updateViaCache: 'none' });
    const offer = async (worker: ServiceWorker): Promise<void> => {
      const others = await otherWindows(worker);
      const take = (): void => {
        asked = true;
        worker.postMessage(TAKE_OVER);
      };
      hear({ kind: 'waiting', others, take });
    };
    const follow = (worker: ServiceWorker | null): void => {
      if (!worker) return;
      const look = (): void => {
        if (worker.state === 'installed' && serviceWorker.controller) void offer(worker);
        else if (worker.state === 'activated' && !asked) hear({ kind: ran ? 'overtaken' : 'ready' });
        else if (worker.state === 'redundant' && !registration.active) {
          hear({ kind: 'failed', why: 'The app could not be kept on this device; reload with a network.' });
        }
      };
      worker.addEventListener('statechange', look);
      look();
    };
    if (registration.waiting) follow(registration.waiting);
    else if (registration.active && !registration.installing) hear({ kind: 'ready' });
    follow(registration.installing);
    registration.addEventListener('updatefound', () => follow(registration.installing));
    let lookedAtMs = Date.now();
    const look = (leastMs: number): void => {
      if (document.visibilityState === 'hidden' || Date.now() - lookedAtMs < leastMs) return;
      lookedAtMs = Date.now();
      registration.update().catch(() => {});
    };
    setInterval(() => look(0), LOOK_EVERY_MS);
    // A page asleep in a pocket has no timers: it looks when it is taken out again.
    document.addEventListener('visibilitychange', () => look(LOOK_AGAIN_MS));
  } catch (error) {
    // Without a network a kept app cannot look for a newer one; it runs all the same.
    const why = error instanceof Error ? error.message : String(error);
    hear(serviceWorker.controller ? { kind: 'ready' } : { kind: 'failed', why });
  }
}

/** How many other windows of this origin are open, as the worker sees them; 0 where it does not answer. */
function otherWindows(worker: ServiceWorker): Promise<number> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    const late = setTimeout(() => resolve(0), 1500);
    port1.onmessage = ({ data }: MessageEvent<number>) => {
      clearTimeout(late);
      resolve(Math.max(0, data - 1));
    };
    worker.postMessage(COUNT_WINDOWS, [port2]);
  });
}
