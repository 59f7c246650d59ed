/** The parts of a site in the order of the water's way, as the trade calls them; each is a place of the file. */
import { valueAt } from '../../sim/studies/place.ts';

export interface Part {
  readonly place: string;
  readonly name: string;
}

const FIXED: readonly Part[] = [
  { place: 'pond', name: 'pond' },
  { place: 'intake', name: 'intake' },
  { place: 'vault', name: 'pump vault' },
  { place: 'pump', name: 'pump' },
  { place: 'plumbing', name: 'tee' },
  { place: 'plumbing.main', name: 'main line' },
  { place: 'plumbing.bottomFeed', name: 'bottom feed' },
  { place: 'plumbing.topFeed', name: 'top feed' },
  { place: 'filter', name: 'filter' },
];

const LAST: readonly Part[] = [
  { place: 'weather', name: 'weather' },
  { place: 'supply', name: 'supply' },
  { place: 'limits', name: 'limits' },
  { place: 'actions', name: 'actions' },
  { place: '', name: 'the run' },
];

const nameIn = (part: unknown, otherwise: string): string => {
  const name = (part as { name?: unknown } | undefined)?.name;
  return typeof name === 'string' ? name : otherwise;
};

export function partsOfFile(file: unknown): Part[] {
  const watercourse = valueAt(file, 'watercourse');
  const reaches = (Array.isArray(watercourse) ? watercourse : []).flatMap((reach, i): Part[] => {
    const place = `watercourse[${i}]`;
    const stones = Array.isArray(reach?.stones) ? reach.stones : [];
    return [
      { place, name: nameIn(reach, `reach ${i + 1}`) },
      ...stones.map((stone: unknown, k: number) => ({
        place: `${place}.stones[${k}]`,
        name: nameIn(stone, `stone ${k + 1}`),
      })),
    ];
  });
  const there = FIXED.filter(({ place }) => valueAt(file, place) !== undefined);
  return [...there, ...reaches, ...LAST];
}

/** The part whose inputs a pressed place opens: the nearest one that has rows of its own. */
export function partAt(file: unknown, place: string): Part {
  const parts = partsOfFile(file).filter((part) => part.place !== '');
  const holds = (part: Part): boolean =>
    place === part.place || place.startsWith(`${part.place}.`) || place.startsWith(`${part.place}[`);
  return parts.filter(holds).sort((a, b) => b.place.length - a.place.length)[0] ?? { place: '', name: 'the run' };
}
