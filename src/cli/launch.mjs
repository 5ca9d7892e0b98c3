#!/usr/bin/env node
// Starts the command line, bundling it first, in silence, when it is missing or older than its sources.
import { pathToFileURL } from 'node:url';
import { builtApp } from '../../config/build-app.mjs';
import { bundle } from '../../config/bundle.mjs';
import { publishedPolicy } from '../../config/csp.mjs';

// npm runs scripts in the package folder; paths are meant from where the person stands.
const home = process.env.INIT_CWD;
const module = await bundle('src/cli/main.ts');
if (home) process.chdir(home);
const { main } = await import(pathToFileURL(module).href);
process.exitCode = await main(process.argv.slice(2), { folder: builtApp, policy: publishedPolicy });
