import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  logLevel: 'warn',
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    // Every asset stays a file of its own: the page's policy lets nothing in but its own origin.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  // The package's front door brings six generators more than the one that is used.
  resolve: { alias: [{ find: /^seedrandom$/, replacement: 'seedrandom/seedrandom.js' }] },
  worker: { format: 'es' },
  preview: { host: 'localhost', port: 4173, strictPort: false },
});
