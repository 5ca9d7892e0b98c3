// Entry of a decoding thread under Node.
import { parentPort } from 'node:worker_threads';
import { inflateNatively } from '../../io/node/index.ts';
import { decodeFunctions } from '../decode-functions.ts';
import { serve } from '../serve.ts';

const port = parentPort;
if (port) {
  inflateNatively();
  serve(decodeFunctions, {
    postMessage: (message, transfer) => port.postMessage(message, transfer as ArrayBuffer[]),
    addEventListener: (_, listener) => {
      port.on('message', (data) => listener({ data } as MessageEvent));
    },
  });
}
