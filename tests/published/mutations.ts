/**
 * Whether the checks would notice a law that is off by a twentieth: the checks are bundled with a factor at one place
 * of each law's source, run anew with one of the factors off, and at least one must fail. Nothing in the laws knows of
 * this.
 *
 * `tsx tests/published/mutations.ts` prints which check noticed which change.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runInThisContext } from 'node:vm';
import { build, type Plugin } from 'vite';
import type { Outcome } from './checks.ts';
import { type Mutation, mutations } from './mutated-places.ts';

/** By how much a law is made wrong, both ways. */
export const FACTORS = [1.05, 0.95] as const;

const lawsFolder = fileURLToPath(new URL('../../sim/laws/', import.meta.url));

/** The source with the marked expression scaled; the place must stand there exactly once. */
function mutate(source: string, { place, instead = place }: Mutation, factor: string): string {
  const found = place.replace(/[«»]/g, '');
  const parts = source.split(found);
  if (parts.length !== 2) throw new Error(`'${found}' stands ${parts.length - 1} times`);
  return parts.join(instead.replace(/«(.*?)»/gs, `(${factor} * ($1))`));
}

/** The checks with some laws scaled, each by a factor of its own that is given when they are run. */
interface Bundle {
  readonly scaled: readonly Mutation[];
  readonly run: (factors: readonly number[]) => { readonly outcomes: readonly Outcome[] };
}

const readLaw = (file: string): string => readFileSync(`${lawsFolder}${file}`, 'utf8');

/** Scales as many places as do not lie in each other; hands back the sources by file and what is left for another bundle. */
function scale(wanted: readonly Mutation[]): { sources: Map<string, string>; scaled: Mutation[]; left: Mutation[] } {
  const sources = new Map<string, string>();
  const scaled: Mutation[] = [];
  const left: Mutation[] = [];
  for (const mutation of wanted) {
    mutate(readLaw(mutation.file), mutation, '1');
    const source = sources.get(mutation.file) ?? readLaw(mutation.file);
    const found = mutation.place.replace(/[«»]/g, '');
    if (source.split(found).length === 2) {
      sources.set(mutation.file, mutate(source, mutation, `lawFactors[${scaled.push(mutation) - 1}]`));
    } else left.push(mutation);
  }
  return { sources, scaled, left };
}

async function bundle(sources: ReadonlyMap<string, string>): Promise<string> {
  const changing: Plugin = {
    name: 'laws with factors',
    enforce: 'pre',
    transform: (_, id) => (id.startsWith(lawsFolder) ? sources.get(id.slice(lawsFolder.length)) : undefined),
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
  return chunk.code;
}

async function bundleAll(): Promise<readonly Bundle[]> {
  const bundles: Bundle[] = [];
  for (let wanted = mutations; wanted.length > 0; ) {
    const { sources, scaled, left } = scale(wanted);
    const code = await bundle(sources);
    bundles.push({ scaled, run: runInThisContext(`((lawFactors) => {${code}; return bundle;})`) });
    wanted = left;
  }
  return bundles;
}

let bundles: Promise<readonly Bundle[]> | undefined;

/** All outcomes with the laws as they stand, or with one of them changed. */
export async function outcomesOf(mutation?: Mutation, factor = 1): Promise<readonly Outcome[]> {
  bundles ??= bundleAll();
  const found = (await bundles).find(({ scaled }) => mutation === undefined || scaled.includes(mutation));
  if (found === undefined) throw new Error(`${mutation?.name} is in no bundle`);
  return found.run(found.scaled.map((each) => (each === mutation ? factor : 1))).outcomes;
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
