import type { Block, SheetFacts } from './block.ts';
import { heightsBlock } from './heights.ts';
import { quantitiesBlock } from './quantities.ts';
import { assumedBlock, cautionsBlock } from './told.ts';
import { firstStartBlock, hoseBlock, stopTestBlock } from './water.ts';
import { pumpBlock, valvesBlock } from './works.ts';

/** All words and figures of the setting-out sheet, in the order of the work. */
export const settingOut = (facts: SheetFacts): Block[] => [
  heightsBlock(facts),
  valvesBlock(facts),
  pumpBlock(facts),
  hoseBlock(facts),
  firstStartBlock(facts),
  stopTestBlock(facts),
  quantitiesBlock(facts),
  assumedBlock(facts),
  cautionsBlock,
];
