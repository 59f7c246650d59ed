import { formatLength } from '../../sim/quantity/format.ts';
import { elevationFigure } from '../section/labels/figures.ts';
import { type Block, type SheetFacts, saidBy } from './block.ts';

/** Over edges and through leaks is no normal loss. */
const UNSOUND = /through leaks|over edges/;

/** What an owner keeps: what is normal, what to do when it is not, winter, cleaning, safety. */
export function ownersCard(facts: SheetFacts): Block[] {
  return [lossBlock(facts), fallsFaster, winter, cleaning(facts), safety];
}

function lossBlock(facts: SheetFacts): Block {
  const { scenario: s, benchmark } = facts;
  const { fillMark } = s.pond;
  const title = 'What is normal';
  const mark =
    fillMark === undefined
      ? []
      : [
          `Kept at its fill mark with the pump running: ${elevationFigure(fillMark - benchmark.elevation, s.display)} from ${benchmark.name}.`,
        ];
  const loss = saidBy(facts, 'loss');
  const [low, high] = [0.013, 0.038].map((each) => formatLength(each, s.display));
  const usual = `No loss was computed here; common practice takes ${low} to ${high} a week as normal.`;
  const unsound =
    loss && UNSOUND.test(loss) ? ['What goes through leaks or over edges is no normal loss: have it mended.'] : [];
  const more = 'Evaporation and splash take more in dry wind and heat, less under plants.';
  return { title, says: [...mark, loss ?? usual, ...unsound, more] };
}

const fallsFaster: Block = {
  title: 'When it falls faster',
  steps: [
    'Top up to the mark, switch the pump off for a day, hose shut, and mark the level on the wall once the water has run back.',
    'After a day: it has fallen as before: the pond itself leaks; look along the level at which it stops.',
    'It has stayed, but for the day’s evaporation: the water course loses it. Look for wet ground beside falls and stream, stones that splash, liner pushed down, leaves that dam.',
    'The pump never runs in a vault that is nearly empty.',
  ],
};

const winter: Block = {
  title: 'Winter',
  says: [
    'Before hard frost: pump off and out, main line, feeds and filter drained, autofill shut and its line empty. A pump that runs on is looked at daily: ice dams falls and leads the water over the edge.',
    'With fish keep a hole in the ice for the air; never break ice by blows. Nobody walks on it.',
  ],
};

function cleaning({ scenario: s }: SheetFacts): Block {
  const filter = s.filter
    ? 'Filter: when its water stands clearly higher than usual or slips round the mats, rinse mats and bags in pond water, not all at once; tap water’s chlorine kills what lives in them.'
    : 'No filter stands here: fine muck is taken out of the pond itself, once a year.';
  return { title: 'Cleaning', says: ['Screen of the intake: weekly, in leaf fall daily; power off first.', filter] };
}

const safety: Block = {
  title: 'Safety',
  says: [
    'Power off before a hand goes into the vault; ground-fault protection tested monthly; repairs by a licensed electrician.',
    'Children drown in little water: fence and depth by code. A hose never hangs in the pond: it sucks back into the drinking water.',
    'Topping up with chlorinated water and fish in it: dose by the true volume. The overflow stays free, away from neighbor and foundation.',
    'Local codes and licensed practice come first; these figures are simulated, not surveyed.',
  ],
};
