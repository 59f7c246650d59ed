import type { PartlyFile } from '../schema.ts';
import { type BasinRead, basinsOf, elementsOf, entryLine, isPool, isStream, pondProfile } from './basins.ts';
import { type Elevations, floorOfProfile, lowest, topOfProfile } from './order.ts';

/** Elevations that contradict each other. */
export function tellElevations(file: PartlyFile, check: Elevations): void {
  for (const basin of basinsOf(file)) tellWater(basin, check);
  tellPond(file, check);
  tellPump(file, check);
  tellSupply(file, check);
  tellWatercourse(file, check);
}

function tellWater({ name, place, floor, level, leak }: BasinRead, check: Elevations): void {
  const what = `the floor of the ${name}`;
  if (typeof level === 'number') check(`${place}.level`, level, 'not below', floor, what);
  check(`${place}.leak.elevation`, leak?.elevation, 'not below', floor, what);
}

function tellPond({ pond, intake, vault }: PartlyFile, check: Elevations): void {
  const floor = floorOfProfile(pondProfile(pond));
  const rim = lowest(pond?.rim?.crest);
  check('pond.rim.crest', rim, 'above', floor, 'the pond’s floor');
  check('pond.fillMark', pond?.fillMark, 'below', rim, 'the lowest point of the pond’s rim');
  check('pond.fillMark', pond?.fillMark, 'above', floor, 'the pond’s floor');
  check('pond.fillMark', pond?.fillMark, 'above', intake?.elevation, 'the intake’s lip, or no water reaches the pump');
  check('pond.overflow.elevation', pond?.overflow?.elevation, 'below', rim, 'the lowest point of the pond’s rim');
  check('pond.overflow.elevation', pond?.overflow?.elevation, 'above', floor, 'the pond’s floor');
  check('intake.elevation', intake?.elevation, 'below', rim, 'the lowest point of the pond’s rim');
  check('intake.elevation', intake?.elevation, 'not below', floor, 'the pond’s floor');
  check('intake.elevation', intake?.elevation, 'not below', floorOfProfile(vault?.profile), 'the vault’s floor');
  check('vault.profile', topOfProfile(vault?.profile), 'above', floor, 'the pond’s floor, for over its top it spills');
}

function tellPump({ pump, vault, pond }: PartlyFile, check: Elevations): void {
  const floor = floorOfProfile(vault?.profile);
  check('pump.suction', pump?.suction, 'not below', floor, 'the vault’s floor');
  check('pump.minimum', pump?.minimum, 'above', pump?.suction, 'the suction');
  check('pump.minimum', pump?.minimum, 'not above', topOfProfile(vault?.profile), 'the vault’s top');
  check('pump.cutOut.below', pump?.cutOut?.below, 'above', floor, 'the vault’s floor');
  check('pump.cutOut.restart', pump?.cutOut?.restart, 'above', pump?.cutOut?.below, 'the level it cuts out below');
  check('pump.cutOut.restart', pump?.cutOut?.restart, 'below', lowest(pond?.rim?.crest), 'the pond’s rim');
}

function tellSupply({ supply, pond, vault }: PartlyFile, check: Elevations): void {
  const autofill = supply?.autofill;
  const floor = autofill?.in === 'vault' ? floorOfProfile(vault?.profile) : floorOfProfile(pondProfile(pond));
  check('supply.autofill.set', autofill?.set, 'above', autofill?.low, 'its low level');
  check('supply.autofill.set', autofill?.set, 'below', lowest(pond?.rim?.crest), 'the lowest point of the pond’s rim');
  check('supply.autofill.low', autofill?.low, 'not below', floor, `the floor of the ${autofill?.in ?? 'pond'}`);
}

function tellWatercourse(file: PartlyFile, check: Elevations): void {
  if (file.filter?.lip) check('filter.lip.crest', lowest(file.filter.lip.crest), 'not below', ...entryLine(file, 0));
  for (const [element, place] of elementsOf(file)) {
    const next = entryLine(file, Number(/\d+/.exec(place)?.[0]) + 1);
    if (isStream(element)) check(`${place}.foot`, element.foot, 'not below', ...next);
    if (!isPool(element)) continue;
    const floor = floorOfProfile(element.profile);
    const rim = lowest(element.rim?.crest);
    const pool = element.name ?? 'pool';
    check(`${place}.rim.crest`, rim, 'above', floor, `the floor of ${pool}`);
    element.stones?.forEach((stone, i) => {
      const here = `${place}.stones[${i}]`;
      const crest = lowest(stone?.crest);
      check(`${here}.crest`, crest, 'below', rim, `the lowest point of the rim of ${pool}`);
      check(`${here}.crest`, crest, 'above', floor, `the floor of ${pool}`);
      check(`${here}.crest`, crest, 'not below', ...next);
      check(`${here}.seep.foot`, stone?.seep?.foot, 'not below', floor, `the floor of ${pool}`);
    });
  }
}
