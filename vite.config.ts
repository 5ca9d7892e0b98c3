import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/pages',
  publicDir: '../../public',
  plugins: [react()],
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
      treeshake: { moduleSideEffects: (id) => !/\/src\/.*(?<!main|\.worker)\.tsx?$/.test(id) },
    },
  },
});
