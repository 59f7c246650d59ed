/**
 * Whether the checks would notice a law that is off by a twentieth: each law's source is changed in one place, the
 * checks are bundled anew with it, and at least one must fail. Nothing in the laws knows of this.
 *
 * `tsx tests/published/mutations.ts` prints which check noticed which change.
 */
import { fileURLToPath } from 'node:url';
import { runInThisContext } from 'node:vm';
import { build, type Plugin } from 'vite';
import type { Outcome } from './checks.ts';
import { type Mutation, mutations } from './mutated-places.ts';

/** By how much a law is made wrong, both ways. */
export const FACTORS = [1.05, 0.95] as const;

const lawsFolder = fileURLToPath(new URL('../../sim/laws/', import.meta.url));

/** The source with the marked expression scaled; the place must stand there exactly once. */
export function mutate(source: string, { place, instead = place }: Mutation, factor: number): string {
  const found = place.replace(/[«»]/g, '');
  const parts = source.split(found);
  if (parts.length !== 2) throw new Error(`'${found}' stands ${parts.length - 1} times`);
  return parts.join(instead.replace(/«(.*?)»/gs, `(${factor} * ($1))`));
}

interface Bundle {
  readonly outcomes: readonly Outcome[];
}

/** All outcomes with the laws as they stand, or with one of them changed. */
export async function outcomesOf(mutation?: Mutation, factor = 1): Promise<readonly Outcome[]> {
  const changing: Plugin = {
    name: 'one law changed',
    enforce: 'pre',
    transform: (code, id) =>
      mutation && id === `${lawsFolder}${mutation.file}` ? mutate(code, mutation, factor) : undefined,
  };
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    publicDir: false,
    plugins: [changing],
    build: {
      write: false,
      minify: false,
      target: 'es2022',
      lib: {
        entry: fileURLToPath(new URL('outcomes.ts', import.meta.url)),
        formats: ['iife'],
        name: 'bundle',
      },
    },
  });
  const output = (Array.isArray(built) ? built : [built]).flatMap((each) => ('output' in each ? each.output : []));
  const chunk = output.find((each) => each.type === 'chunk');
  if (chunk?.type !== 'chunk') throw new Error('nothing was bundled');
  return (runInThisContext(`(() => {${chunk.code}; return bundle;})()`) as Bundle).outcomes;
}

/** Checks out of tolerance with a law changed. */
export async function noticedBy(mutation: Mutation, factor: number): Promise<readonly Outcome[]> {
  return (await outcomesOf(mutation, factor)).filter(({ error, tolerance }) => !(error <= tolerance));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const mutation of mutations) {
    for (const factor of FACTORS) {
      const noticed = await noticedBy(mutation, factor);
      const print = noticed.filter(({ kind }) => kind === 'published value');
      const first = (print[0] ?? noticed[0])?.id ?? 'NOTHING';
      process.stdout.write(
        `${mutation.file.padEnd(17)}${mutation.name.padEnd(44)}×${factor}  ${print.length} of print, ${noticed.length} in all: ${first}\n`,
      );
    }
  }
}
