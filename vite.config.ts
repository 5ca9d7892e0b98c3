import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { entryBudget } from './config/entry-budget.mjs';
import { precache, programOf } from './config/precache.mjs';

const entry = (path: string): string => resolve(import.meta.dirname, 'src', path);

export default defineConfig({
  define: { __PROGRAM__: JSON.stringify(programOf(resolve(import.meta.dirname, 'src'))) },
  root: 'src/pages',
  // The built app runs under any path of a host: nothing in it is addressed from the root.
  base: './',
  publicDir: '../../public',
  plugins: [react(), entryBudget(), precache()],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist',
    emptyOutDir: true,
    target: 'es2023',
    sourcemap: true,
    // The map library is one large chunk, loaded after the page has been painted.
    chunkSizeWarningLimit: 1200,
    // Inlined pieces would be data: addresses, which the content security policy refuses.
    assetsInlineLimit: 0,
    // No module of src/ does anything by being imported but entries, workers and style sheets: what the page does not use
    // (raster decoders, the whole computation) stays in the workers.
    rolldownOptions: {
      checks: { pluginTimings: false },
      treeshake: { moduleSideEffects: (id) => !/\/src\/.*(?<!main|\.worker|\/sw)\.tsx?$/.test(id) },
      input: {
        index: entry('pages/index.html'),
        call: entry('pages/call/index.html'),
        sw: entry('workers/web/sw.ts'),
      },
      // The service worker keeps its name for good: another name would be another worker beside the old one.
      output: { entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js') },
    },
  },
});
