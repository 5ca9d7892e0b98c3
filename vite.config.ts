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
  // Each page is built by itself: parts that both would share are cut up into dozens of small files, and asking for those is most
  // of a cold start on a slow phone.
  environments: {
    client: {
      build: { rolldownOptions: { input: { index: entry('pages/index.html'), sw: entry('workers/web/sw.ts') } } },
    },
    call: {
      consumer: 'client',
      build: { emptyOutDir: false, rolldownOptions: { input: { call: entry('pages/call/index.html') } } },
    },
  },
  builder: {
    buildApp: async (builder) => {
      await builder.build(builder.environments.client!);
      await builder.build(builder.environments.call!);
    },
  },
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
      // The service worker keeps its name for good: another name would be another worker beside the old one.
      output: {
        entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js'),
        // All that a page loads before it shows anything is one file beside its entry.
        codeSplitting: {
          groups: [{ name: 'start', tags: ['$initial'], test: /\/src\/(?!pages\/|workers\/web\/sw)|\/node_modules\// }],
        },
      },
    },
  },
});
