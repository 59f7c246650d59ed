import { depositRoom, LEAST_POROSITY } from '../../laws/deposit.ts';
import { BETA } from '../defaults-filter.ts';
import { lowestEnd } from '../defaults-plumbing.ts';
import type { Tell } from '../fields.ts';
import { boreOf } from '../pipe-sizes.ts';
import { areaAt } from '../profile.ts';
import type { PartlyFile } from '../schema.ts';
import { basinsOf, elementsOf, namesAreKnown } from './basins.ts';
import { type Elevations, floorOfProfile, lowest } from './order.ts';

/** Pump, pipes and filter: curves that fall, ends of pipes that lie where water can be, media inside their box. */
export function tellCircuit(file: PartlyFile, tell: Tell, check: Elevations): void {
  tellCurves(file.pump, tell);
  tellEnds(file, tell, check);
  tellCheckValve(file.plumbing?.main, tell);
  tellMedia(file.filter, tell, check);
  const { filter } = file;
  const floor = floorOfProfile(filter?.profile);
  const rim = lowest(filter?.rim?.crest);
  check('filter.lip.crest', lowest(filter?.lip?.crest), 'below', rim, 'the lowest point of the filter’s rim');
  check('filter.lip.crest', lowest(filter?.lip?.crest), 'above', floor, 'the filter’s floor');
  check('filter.rim.crest', rim, 'above', floor, 'the filter’s floor');
}

type Points = readonly (readonly [number, number])[];

function tellAscending(points: Points, place: string, tell: Tell): void {
  for (let i = 1; i < points.length; i += 1) {
    const [flow, before] = [points[i]?.[0] ?? 0, points[i - 1]?.[0] ?? 0];
    if (flow <= before) tell(`${place}[${i}]`, `flow ${flow} after ${before}`, 'flows that ascend');
  }
}

function tellCurves(pump: PartlyFile['pump'], tell: Tell): void {
  const curve = pump?.curve;
  if (Array.isArray(pump?.power)) tellAscending(pump.power as Points, 'pump.power', tell);
  if (!Array.isArray(curve)) return;
  const points = curve as Points;
  tellAscending(points, 'pump.curve', tell);
  for (let i = 1; i < points.length; i += 1) {
    const [head, before] = [points[i]?.[1] ?? 0, points[i - 1]?.[1] ?? 0];
    if (head > before)
      tell(`pump.curve[${i}]`, `head ${head} m after ${before} m`, 'a head that does not rise with flow');
  }
  if (points[0]?.[0] !== 0)
    tell('pump.curve[0]', `flow ${points[0]?.[0]}`, 'the first point at flow 0: the shut-off head');
  const [first, last] = [points[0]?.[1] ?? 0, points[points.length - 1]?.[1] ?? 0];
  if (first === last) tell('pump.curve', `one head of ${first} m throughout`, 'a head that falls with flow');
}

function tellEnds(file: PartlyFile, tell: Tell, check: Elevations): void {
  const { plumbing, pump, filter } = file;
  if (!plumbing) return;
  const { bottomFeed, topFeed } = plumbing;
  const suction = pump?.suction;
  check('plumbing.tee', plumbing.tee ?? lowestEnd(plumbing), 'not below', suction, 'the pump’s suction');
  const ends = [plumbing.tee ?? lowestEnd(plumbing), topFeed ? topFeed.outlet : bottomFeed?.inlet];
  if (ends.every((z) => z !== undefined) && !plumbing.profile) {
    check(
      topFeed ? 'plumbing.topFeed.outlet' : 'plumbing.tee',
      Math.max(...(ends as number[])),
      'above',
      suction,
      'the pump’s suction',
    );
  }
  const first = filter ? 'filter' : (elementsOf(file)[0]?.[0].name ?? 'pond');
  const floors = new Map(basinsOf(file).map(({ name, floor }) => [name, floor]));
  check('plumbing.bottomFeed.inlet', bottomFeed?.inlet, 'not below', floors.get(first), `the floor of the ${first}`);
  const bed = filter?.media?.bottom;
  const lip = lowest(filter?.lip?.crest);
  check(
    'plumbing.bottomFeed.inlet',
    bottomFeed?.inlet,
    'not above',
    bed,
    'the bottom of the media, through which it feeds',
  );
  check('plumbing.bottomFeed.inlet', bottomFeed?.inlet, 'below', lip, 'the filter’s lip');
  if (!topFeed) return;
  const to = topFeed.to === undefined || topFeed.to === 'filter' ? first : topFeed.to;
  const places = ['filter', 'pond', ...elementsOf(file).flatMap(([{ name }]) => name ?? [])];
  if (!places.includes(to) && namesAreKnown(file))
    tell('plumbing.topFeed.to', JSON.stringify(to), `one of ${places.join(', ')}`);
  if (to === 'filter' && bed !== undefined) {
    check('plumbing.topFeed.outlet', topFeed.outlet, 'above', bed, 'the bottom of the media');
  } else check('plumbing.topFeed.outlet', topFeed.outlet, 'not below', floors.get(to), `the floor of ${to}`);
}

/** A valve that leaks by more than the pipe's own bore is none. */
function tellCheckValve(main: NonNullable<PartlyFile['plumbing']>['main'], tell: Tell): void {
  const leak = typeof main?.checkValve === 'object' ? main.checkValve.leak : undefined;
  const bore = main?.diameter ?? boreOf(main?.size ?? '');
  if (leak === undefined || bore === undefined) return;
  const most = (Math.PI / 4) * bore ** 2;
  if (leak <= most) return;
  const wanted = `at most the main’s bore (${most.toPrecision(2)} m2); false where there is no check valve`;
  tell('plumbing.main.checkValve.leak', `${leak} m2`, wanted);
}

type MediaRead = NonNullable<NonNullable<PartlyFile['filter']>['media']>;

/** Weight under water that counts as one: about what a handful of gravel weighs, N. */
const LEAST_WEIGHT = 1;

function tellMedia(filter: PartlyFile['filter'], tell: Tell, check: Elevations): void {
  const media = filter?.media;
  if (!media) return;
  check('filter.media.bottom', media.bottom, 'not below', floorOfProfile(filter.profile), 'the filter’s floor');
  tellLayers(filter, tell, check);
  tellWeight(media, tell);
  tellDeposits(media, lowest(filter.lip?.crest), tell);
  const names = (media.layers ?? []).map((layer) => layer?.name);
  names.forEach((name, i) => {
    if (name !== undefined && names.indexOf(name) < i) {
      tell(`filter.media.layers[${i}].name`, `${JSON.stringify(name)} a second time`, 'each layer’s name once');
    }
  });
}

/** No more settles in a layer than leaves it the least of pores, and nothing above the lip, where no water goes. */
function tellDeposits({ area, bottom, layers }: MediaRead, lip: number | undefined, tell: Tell): void {
  let from = bottom;
  for (const [i, layer] of (layers ?? []).entries()) {
    if (layer?.thickness === undefined || layer.porosity === undefined || area === undefined) return;
    const { deposit = 0, porosity, thickness, beta = BETA } = layer;
    const wet = lip === undefined || from === undefined ? thickness : Math.min(thickness, Math.max(0, lip - from));
    const room = depositRoom(porosity, beta, area * wet);
    if (deposit > room * (1 + 1e-9)) {
      const why = wet < thickness ? ' up to the filter’s lip' : '';
      const wanted = `at most ${Number((1000 * room).toPrecision(3))} L, all that its pores take${why} (${100 * LEAST_POROSITY} % stay open)`;
      tell(`filter.media.layers[${i}].deposit`, `${Number((1000 * deposit).toPrecision(3))} L`, wanted);
    }
    from = from === undefined ? undefined : from + thickness;
  }
}

/** Media that nothing holds down are no filter: they float up at the first trickle. */
function tellWeight({ submergedWeight, holdDown }: MediaRead, tell: Tell): void {
  if (submergedWeight === undefined || submergedWeight + (holdDown ?? 0) >= LEAST_WEIGHT) return;
  const held = holdDown === undefined ? '' : ` and ${holdDown} N that hold it down`;
  const wanted = `at least ${LEAST_WEIGHT} N together with "holdDown": media that weigh nothing under water float up`;
  tell('filter.media.submergedWeight', `${submergedWeight} N${held}`, wanted);
}

function tellLayers({ media, profile, rim }: NonNullable<PartlyFile['filter']>, tell: Tell, check: Elevations): void {
  if (!media || media.bottom === undefined || !media.layers) return;
  let z = media.bottom;
  for (const layer of media.layers) {
    if (layer?.thickness === undefined) return;
    const room = profile && areaAt(profile, z + layer.thickness / 2);
    z += layer.thickness;
    if (room === undefined || room === 0 || media.area === undefined || media.area <= room * (1 + 1e-9)) continue;
    tell(
      'filter.media.area',
      `${media.area} m2`,
      `not more than the filter’s plan area (${Number(room.toFixed(4))} m2)`,
    );
    break;
  }
  const top = media.layers.reduce((sum, layer) => sum + (layer?.thickness ?? 0), media.bottom);
  check('filter.media.layers', top, 'not above', lowest(rim?.crest), 'the filter’s rim: the media reach out of it');
}
