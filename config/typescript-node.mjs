// node --import: TypeScript is read by the hooks beside this file.
import { register } from 'node:module';

register('./typescript-hooks.mjs', import.meta.url);
