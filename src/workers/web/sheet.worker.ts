// Entry of the worker that draws plan sheets for the call view in a browser.
import type { Port } from '../messages.ts';
import { serve } from '../serve.ts';
import { sheetFunctions } from '../sheet/index.ts';

serve(sheetFunctions, globalThis as unknown as Port);
