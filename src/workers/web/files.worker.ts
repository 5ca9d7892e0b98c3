// Entry of the worker that reads and writes whole files in a browser.
import { canvasShrinker } from '../../io/web/index.ts';
import { fileFunctions } from '../file-functions.ts';
import type { Port } from '../messages.ts';
import { serve } from '../serve.ts';

serve(
  fileFunctions(canvasShrinker, () => crypto.randomUUID()),
  globalThis as unknown as Port,
);
