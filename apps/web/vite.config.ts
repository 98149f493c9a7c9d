import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: fileURLToPath(new URL('../../dist/apps/web', import.meta.url)),
    emptyOutDir: true,
    target: 'es2022',
  },
  // The server refuses unsafe requests from another host than its own, so the host must stay as the browser sent it.
  server: { proxy: { '/api': { target: 'http://127.0.0.1:4170', changeOrigin: false } } },
});
