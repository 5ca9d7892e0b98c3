import { UserError } from '../../units/index.ts';
import { appFolder, ownName } from './app-folder.ts';
import type { KeptStore } from './kept-store.ts';

/** Name of the cache; the service worker leaves it alone. */
export const KEPT_CACHE = 'brinkbook-kept-1';
/** Addresses of entries, under the app's own folder: nothing is served there. */
const PREFIX = 'kept/';

/** The store in this browser. Throws `UserError` where it keeps nothing (an insecure page, a private window) or has no room. */
export function cacheStore(): KeptStore {
  const prefix = appFolder().pathname + PREFIX;
  const open = async (): Promise<Cache> => {
    try {
      return await caches.open(ownName(KEPT_CACHE));
    } catch (cause) {
      throw new UserError(
        'no-storage',
        'This browser does not let the page keep anything (a private window, or storage is blocked); open it in a normal window or allow storage.',
        { cause },
      );
    }
  };
  const address = (key: string): string => prefix + key;
  return {
    async read(key) {
      const answer = await (await open()).match(address(key));
      if (!answer) return null;
      return {
        bytes: await answer.arrayBuffer(),
        atMs: Number(answer.headers.get('x-kept-at')),
        version: answer.headers.get('x-version'),
      };
    },
    async write(key, bytes, version = null) {
      const headers = new Headers({ 'x-kept-at': String(Date.now()) });
      if (version !== null) headers.set('x-version', version);
      try {
        await (await open()).put(address(key), new Response(bytes, { headers }));
      } catch (cause) {
        if (cause instanceof UserError) throw cause;
        throw new UserError(
          'disk-full',
          'There is no room left on this device to keep this for use without a network; make room, then try again.',
          { cause },
        );
      }
    },
    async keys(beginning) {
      const requests = await (await open()).keys();
      const paths = requests.map(({ url }) => new URL(url).pathname.slice(prefix.length));
      return paths.filter((key) => key.startsWith(beginning));
    },
    async remove(key) {
      await (await open()).delete(address(key));
    },
  };
}
