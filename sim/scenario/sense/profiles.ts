import type { Tell } from '../fields.ts';
import type { CrestPoint, DisplacedLayer, ProfilePoint } from '../scenario.ts';
import type { PartlyFile } from '../schema.ts';
import { floorOf, shapeBasin } from '../shapes.ts';
import { elementsOf, isPool, readShape } from './basins.ts';
import { meters } from './order.ts';

/** Profiles that ascend, crests that run on, layers that leave room for water, banks that leave a floor. */
export function tellProfiles(file: PartlyFile, tell: Tell): void {
  const { pond, vault, filter, plumbing } = file;
  tellBasin(pond, 'pond', gravelOf(pond), tell);
  tellShape(pond, tell);
  tellBasin(vault, 'vault', [], tell);
  tellBasin(filter, 'filter', [], tell);
  tellProfile(plumbing?.profile, 'plumbing.profile', tell);
  tellCrest(pond?.rim, 'pond.rim', tell);
  tellCrest(filter?.lip, 'filter.lip', tell);
  tellCrest(filter?.rim, 'filter.rim', tell);
  for (const [element, place] of elementsOf(file)) {
    if (!isPool(element)) continue;
    tellBasin(element, place, [], tell);
    tellCrest(element.rim, `${place}.rim`, tell);
    element.stones?.forEach((stone, i) => {
      tellCrest(stone, `${place}.stones[${i}]`, tell);
    });
  }
}

const gravelOf = (pond: PartlyFile['pond']): readonly DisplacedLayer[] => {
  const shape = readShape(pond);
  return shape ? shapeBasin(shape).displaced : [];
};

interface Bowl {
  readonly profile?: readonly ProfilePoint[] | undefined;
  readonly displaced?: readonly (Partial<DisplacedLayer> | undefined)[] | undefined;
}

function tellBasin(bowl: Bowl | undefined, place: string, more: readonly DisplacedLayer[], tell: Tell): void {
  tellProfile(bowl?.profile, `${place}.profile`, tell);
  tellDisplaced(bowl?.displaced as readonly DisplacedLayer[] | undefined, more, `${place}.displaced`, tell);
}

function tellProfile(profile: readonly ProfilePoint[] | undefined, place: string, tell: Tell): void {
  const first = profile?.[0];
  const last = profile?.[profile.length - 1];
  if (!profile || !first || !last) return;
  for (let i = 1; i < profile.length; i += 1) {
    const [z, a] = profile[i] ?? last;
    const [below, under] = profile[i - 1] ?? first;
    if (z < below) tell(`${place}[${i}]`, `${meters(z)} after ${meters(below)}`, 'a profile that ascends');
    if (i >= 2 && z === below && z === profile[i - 2]?.[0]) {
      tell(`${place}[${i}]`, `a third point at ${meters(z)}`, 'two points at one elevation at the most: a ledge');
    }
    if (z > below && a === 0 && under === 0) tell(`${place}[${i}]`, 'no area over a whole layer', 'room for water');
  }
  if (last[1] <= 0) tell(place, 'no area at its top', 'an area above 0 at the last point');
  if (first[0] === last[0]) tell(place, `all points at ${meters(first[0])}`, 'a profile that ascends');
}

function tellCrest(
  crest: { readonly crest?: readonly CrestPoint[] | undefined } | undefined,
  place: string,
  tell: Tell,
): void {
  const line = crest?.crest;
  if (!line) return;
  for (let i = 1; i < line.length; i += 1) {
    const [station] = line[i] ?? [0];
    const [before] = line[i - 1] ?? [0];
    if (station < before) {
      tell(`${place}.crest[${i}]`, `station ${meters(station)} after ${meters(before)}`, 'stations that ascend');
    }
  }
  if (line[0]?.[0] === line[line.length - 1]?.[0])
    tell(`${place}.crest`, 'a crest of no width', 'stations that ascend');
}

function tellDisplaced(
  given: readonly DisplacedLayer[] | undefined,
  more: readonly DisplacedLayer[],
  place: string,
  tell: Tell,
): void {
  const layers = [...(given ?? [])].filter(
    ({ from, to, fraction }) => ![from, to, fraction].includes(undefined as never),
  );
  layers.forEach(({ from, to }, i) => {
    if (from >= to) tell(`${place}[${i}]`, `from ${meters(from)} to ${meters(to)}`, '"from" below "to"');
  });
  const all = [...layers, ...more];
  for (const { from: edge } of all) {
    const sum = all.reduce(
      (taken, { from, to, fraction }) => (from <= edge && edge < to ? taken + fraction : taken),
      0,
    );
    if (sum < 1) continue;
    tell(place, `${Number(sum.toFixed(3))} displaced at ${meters(edge)}`, 'fractions that add to less than 1');
    return;
  }
}

function tellShape(pond: PartlyFile['pond'], tell: Tell): void {
  const shape = pond?.shape;
  if (!shape || shape.depth === undefined) return;
  const { depth, gravel } = shape;
  shape.shelves?.forEach((shelf, i) => {
    if (shelf?.depth !== undefined && shelf.depth >= depth) {
      tell(`pond.shape.shelves[${i}].depth`, meters(shelf.depth), `less than the pond’s depth (${meters(depth)})`);
    }
  });
  if (gravel !== undefined && gravel >= depth) {
    tell('pond.shape.gravel', meters(gravel), `less than the pond’s depth (${meters(depth)})`);
  }
  if (readShape(pond) || shape.length === undefined || shape.width === undefined) return;
  if (shape.shelves?.some((shelf) => shelf?.depth === undefined || shelf.width === undefined)) return;
  const floor = floorOf(shape as Parameters<typeof floorOf>[0]);
  tell(
    'pond.shape',
    `a floor of ${meters(floor.length)} × ${meters(floor.width)}`,
    'banks and shelves that leave a floor',
  );
}
