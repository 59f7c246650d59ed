import { defineConfig, type Plugin } from 'vite';

/** What stands beside the bundle, in keep/public, and is wanted without a network. */
const BESIDE = ['manifest.webmanifest', 'mark-180.png', 'mark-192.png', 'mark-512.png', 'mark-whole-512.png'];

async function digest(text: string): Promise<string> {
  const bytes = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(bytes, 0, 8)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * Tells the program that serves the page offline which files this version has, and names the version by them.
 *
 * Written by hand: what a library for it would bring is far more than the sixty lines that are wanted here.
 */
const offline: Plugin = {
  name: 'offline',
  apply: 'build',
  enforce: 'post',
  generateBundle: {
    order: 'post',
    async handler(_, bundle) {
      const program = bundle['offline.js'];
      if (program?.type !== 'chunk') return;
      const files = Object.keys(bundle).filter((file) => file !== program.fileName);
      const page = bundle['index.html'];
      const html = page?.type === 'asset' ? String(page.source) : '';
      const version = await digest([...files, html, program.code].join());
      program.code = program.code
        .replaceAll('KEPT_FILES', JSON.stringify([...files, ...BESIDE]))
        .replaceAll('KEPT_VERSION', JSON.stringify(version));
    },
  },
};

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  publicDir: 'keep/public',
  logLevel: 'warn',
  plugins: [offline],
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    // Every asset stays a file of its own: the page's policy lets nothing in but its own origin.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: { index: `${import.meta.dirname}/index.html`, offline: `${import.meta.dirname}/keep/offline.ts` },
      output: {
        // Its place is its reach, and its name what the browser asks for again.
        entryFileNames: ({ name }) => (name === 'offline' ? 'offline.js' : 'assets/[name]-[hash].js'),
      },
    },
  },
  // The package's front door brings six generators more than the one that is used.
  resolve: { alias: [{ find: /^seedrandom$/, replacement: 'seedrandom/seedrandom.js' }] },
  worker: { format: 'es' },
  preview: { host: 'localhost', port: 4173, strictPort: false },
});
