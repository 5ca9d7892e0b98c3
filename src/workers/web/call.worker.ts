// Entry of the call view's worker in a browser: its own decoders, and files out of what is kept.
import { cacheStore, keepingFetch } from '../../io/offline/index.ts';
import { callFunctions } from '../call/index.ts';
import type { Port } from '../messages.ts';
import { serve } from '../serve.ts';
import { webDecodePool } from './decode-pool.ts';
import { webOpener } from './opener.ts';

let keeping = false;
const store = cacheStore();
const ask = keepingFetch(store, () => (keeping ? 'keep' : 'kept first'));
const functions = callFunctions(webOpener(webDecodePool(2), ask), store, (now) => {
  keeping = now;
});
serve(functions, globalThis as unknown as Port);
