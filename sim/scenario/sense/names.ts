import type { Tell } from '../fields.ts';
import type { PartlyFile } from '../schema.ts';
import { elementsOf, isPool } from './basins.ts';

/** Basins that are always called so, and every flow of the answer that no file names. */
export const RESERVED_NAMES: readonly string[] = [
  'pond',
  'vault',
  'riser',
  'filter',
  'main',
  'bottom feed',
  'top feed',
  'media',
  'gap',
  'intake',
  'vault spill',
  'lip',
  'filter rim',
  'rim',
  'overflow',
  'autofill',
  'leak',
];

interface Named {
  readonly name: string;
  readonly place: string;
  /** The flow that a part of this name adds to the answer beside its own. */
  readonly makes: string;
}

function namesOf(file: PartlyFile): Named[] {
  const names: Named[] = [];
  const add = (name: string | undefined, place: string, suffix: string) => {
    if (name !== undefined) names.push({ name, place: `${place}.name`, makes: `${name} ${suffix}` });
  };
  for (const [element, place] of elementsOf(file)) {
    add(element.name, place, isPool(element) ? 'rim' : 'edge');
    if (!isPool(element)) continue;
    element.stones?.forEach((stone, i) => {
      add(stone?.name, `${place}.stones[${i}]`, 'seep');
    });
  }
  return names;
}

/** Pools, streams and stones: each name once, none that the answer itself uses. */
export function tellNames(file: PartlyFile, tell: Tell): void {
  const names = namesOf(file);
  const makers = new Map(names.map(({ name, makes }) => [makes, name]));
  const seen = new Set<string>();
  for (const { name, place } of names) {
    const maker = makers.get(name);
    if (RESERVED_NAMES.includes(name)) tell(place, JSON.stringify(name), 'a name that is not reserved');
    else if (maker !== undefined) tell(place, JSON.stringify(name), `another name: "${maker}" has a flow of that name`);
    if (seen.has(name)) tell(place, `${JSON.stringify(name)} a second time`, 'each name once');
    seen.add(name);
  }
  tellMain(file, tell);
  tellHoses(file.supply?.hose, tell);
}

function tellMain(file: PartlyFile, tell: Tell): void {
  for (const [element, place] of elementsOf(file)) {
    if (!isPool(element)) continue;
    const mains = (element.stones ?? []).flatMap((stone, i) => (stone?.main ? [i] : []));
    for (const i of mains.slice(1)) tell(`${place}.stones[${i}].main`, 'a second main stone', 'one in a pool');
  }
}

function tellHoses(hose: NonNullable<PartlyFile['supply']>['hose'], tell: Tell): void {
  if (!Array.isArray(hose)) return;
  const names = hose.map((each) => (each as { name?: string } | undefined)?.name);
  names.forEach((name, i) => {
    if (name !== undefined && names.indexOf(name) < i) {
      tell(`supply.hose[${i}].name`, `${JSON.stringify(name)} a second time`, 'each hose’s name once');
    }
  });
}
