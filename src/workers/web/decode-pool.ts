import type { DecodePool } from '../../io/index.ts';
import { decodePool } from '../decode-pool.ts';

/** A pool of decoding workers in a browser, from the page or from inside another worker. */
export function webDecodePool(size = 2): DecodePool {
  return decodePool((lost) => {
    const worker = new Worker(new URL('./decode.worker.ts', import.meta.url), { type: 'module', name: 'decode' });
    worker.addEventListener('error', lost, { once: true });
    worker.addEventListener('messageerror', lost, { once: true });
    return { port: worker, busy: () => {}, stop: () => worker.terminate() };
  }, size);
}
