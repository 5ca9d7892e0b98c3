// Entry of a decoding worker in a browser. Its response alone may run WebAssembly (zstd).
import { decodeFunctions } from '../decode-functions.ts';
import type { Port } from '../messages.ts';
import { serve } from '../serve.ts';

serve(decodeFunctions, self as unknown as Port);
