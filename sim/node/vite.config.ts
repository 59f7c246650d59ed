import { chmodSync, existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const command = here('../../dist/sim/main.js');

/** The command and the library, each one file for Node with everything they use inside. */
export default defineConfig({
  root: here('../..'),
  logLevel: 'warn',
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: true,
    target: 'node20',
    outDir: here('../../dist/sim'),
    emptyOutDir: true,
    rolldownOptions: {
      input: { main: here('main.ts'), index: here('../index.ts') },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
  plugins: [
    {
      name: 'the command can be run by its name',
      writeBundle() {
        if (existsSync(command)) chmodSync(command, 0o755);
      },
    },
  ],
});
