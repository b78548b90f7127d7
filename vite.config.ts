import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import solid from 'vite-plugin-solid';

// The screens: one page for all of them, the address says which. No inline script, so the server can forbid those.
export default defineConfig({
  root: fileURLToPath(new URL('web', import.meta.url)),
  publicDir: false,
  plugins: [solid()],
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2023',
    sourcemap: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
    // Which files each screen loads: tests/bench weighs them.
    manifest: true,
  },
});
