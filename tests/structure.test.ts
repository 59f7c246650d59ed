/** The shape of the repository, read from its files: what stands at the top, who may import whom, how long a file may be. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

interface Import {
  from: string;
  /** A path from the root for a file of ours, the bare name for a package. */
  to: string;
}

function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length));
}

const importStatement =
  /(?:^|\n)\s*(?:import|export)\s[^'";]*?from\s*'([^']+)'|(?:^|\n)\s*import\s*'([^']+)'|\bimport\(\s*'([^']+)'/g;

function importsOf(file: string): Import[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(importStatement)].map((match) => {
    const name = (match[1] ?? match[2] ?? match[3])!.replace(/\?.*$/, '');
    return { from: file, to: name.startsWith('.') ? normalize(join(dirname(file), name)) : name };
  });
}

const code = [...filesUnder('sim'), ...filesUnder('web')].filter((file) => file.endsWith('.ts'));
const imports = code.flatMap(importsOf);
const under = (folder: string) => (path: string) => path.startsWith(`${folder}/`);
const isOurs = (path: string): boolean => under('sim')(path) || under('web')(path);
const broken = (rule: (each: Import) => boolean): string[] =>
  imports.filter(rule).map(({ from, to }) => `${from} imports ${to}`);

/** A package by its name, without the path inside it. */
const packageOf = (name: string): string => name.split('/', name.startsWith('@') ? 2 : 1).join('/');
const isNode = (name: string): boolean => name.startsWith('node:');

/** Build files say how the code is bundled and are no part of it. */
const isBuildFile = (file: string): boolean => file.endsWith('vite.config.ts') || file === 'sim/node/start.ts';

/** What an answer and a failure are is said in words of types that every stage may use. */
const vocabulary = ['sim/results/answer.ts', 'sim/results/failure.ts'];

/** The stages data goes through; a file may import its own stage and earlier ones. */
const stages = ['sim/scenario', 'sim/network', 'sim/results', 'web/engine', 'web/plots', 'web/views'];

describe('the repository', () => {
  test('has only the agreed names at its top', () => {
    const agreed = ['sim', 'web', 'tests', 'scenarios', 'README.md', 'DEVELOPERS.md', 'LICENSE'];
    const tools = ['package.json', 'package-lock.json', 'tsconfig.json'];
    const made = ['node_modules', 'dist', 'test-results'];
    const names = readdirSync(root).filter((name) => !name.startsWith('.'));
    expect(names.filter((name) => ![...agreed, ...tools, ...made].includes(name))).toEqual([]);
  });

  test('has no file of sim or web over 250 lines', () => {
    const texts = [...filesUnder('sim'), ...filesUnder('web')].filter((file) => /\.(ts|css|html)$/.test(file));
    const lines = (file: string): number => readFileSync(join(root, file), 'utf8').trimEnd().split('\n').length;
    expect(texts.filter((file) => lines(file) > 250).map((file) => `${file}: ${lines(file)} lines`)).toEqual([]);
  });

  test('ships only packages that package.json lists as dependencies', () => {
    const listed = Object.keys(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).dependencies);
    const used = imports.filter(({ from, to }) => !isBuildFile(from) && !isOurs(to) && !isNode(to));
    expect(used.filter(({ to }) => !listed.includes(packageOf(to)))).toEqual([]);
  });
});

describe('imports', () => {
  test('are found by the reader of this test', () => {
    expect(imports.length).toBeGreaterThan(50);
    expect(imports).toContainEqual({ from: 'web/main.ts', to: 'web/views/page.ts' });
    expect(imports).toContainEqual({ from: 'web/engine/worker.ts', to: 'sim/index.ts' });
  });

  test('of sim never reach web', () => {
    expect(broken(({ from, to }) => under('sim')(from) && under('web')(to))).toEqual([]);
  });

  test.each(['sim/laws', 'sim/solver'])('of %s stay within it', (folder) => {
    expect(broken(({ from, to }) => under(folder)(from) && !under(folder)(to))).toEqual([]);
  });

  test('of Node and of sim/node stand in sim/node only', () => {
    const knowsNode = (to: string): boolean => isNode(to) || under('sim/node')(to);
    expect(broken(({ from, to }) => !under('sim/node')(from) && knowsNode(to))).toEqual([]);
  });

  test('of plots are pure: no element library, solver or network', () => {
    const barred = (to: string): boolean =>
      packageOf(to) === 'lit' || under('sim/solver')(to) || under('sim/network')(to);
    expect(broken(({ from, to }) => under('web/plots')(from) && barred(to))).toEqual([]);
  });

  test('go from later stages to earlier ones', () => {
    const stage = (path: string): number => stages.findIndex((folder) => under(folder)(path));
    expect(broken(({ from, to }) => !vocabulary.includes(to) && stage(from) >= 0 && stage(to) > stage(from))).toEqual(
      [],
    );
  });
});
