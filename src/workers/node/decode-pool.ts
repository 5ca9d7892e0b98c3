import { Worker } from 'node:worker_threads';
import type { DecodePool } from '../../io/index.ts';
import { decodePool } from '../decode-pool.ts';

/** The worker's bundled module, which lies beside the bundled entry. */
const beside = new URL('./decode.mjs', import.meta.url);

/** A pool of decoding threads under Node; `module` is the bundled `decode.ts`. An idle pool does not keep the process alive. */
export function nodeDecodePool(size = 2, module: URL = beside): DecodePool {
  return decodePool((lost) => {
    // A library below geotiff takes a thread without data for one of its own and fails.
    const thread = new Worker(module, { workerData: {} });
    thread.unref();
    thread.once('error', lost);
    thread.once('exit', lost);
    return {
      port: {
        postMessage: (message, transfer) => thread.postMessage(message, transfer as ArrayBuffer[]),
        addEventListener: (_, listener) => {
          thread.on('message', (data) => listener({ data } as MessageEvent));
        },
      },
      busy: (is) => (is ? thread.ref() : thread.unref()),
      stop: () => {
        thread.removeAllListeners('exit');
        void thread.terminate();
      },
    };
  }, size);
}
