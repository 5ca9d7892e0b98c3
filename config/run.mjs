// Runs a TypeScript entry under Node: node config/run.mjs ENTRY [arguments …]
import { pathToFileURL } from 'node:url';
import { bundle } from './bundle.mjs';

const [entry, ...rest] = process.argv.slice(2);
const module = await bundle(entry, ['src', 'seeds', 'tests']);
process.argv = [process.argv[0], module, ...rest];
await import(pathToFileURL(module).href);
