import { parseTimeOfDay } from '../../quantity/index.ts';
import { about, type Field, isObject, oneOf, optional, quantity, textLike, type Value, word } from '../fields.ts';
import { list, object, tagged, wholeList } from '../fields-of-many.ts';
import { elevation, hole, share, time, wordOr } from './common.ts';

const name = textLike('a name', /\S/);
const onOff = word('on', 'off');

const when = object(
  { basin: name, rises: optional(elevation), falls: optional(elevation) },
  { exactlyOne: [['rises', 'falls']] },
);

const timing = {
  at: optional(about('from the start', time)),
  when: optional(about('each time a basin’s level crosses', when)),
};

/** A deed done at a time or whenever a level crosses. */
const timed = <const W extends string, const K extends Readonly<Record<string, Field<unknown>>>>(deed: W, keys: K) =>
  object({ ...timing, do: word(deed), ...keys }, { exactlyOne: [['at', 'when']] });

const pumpOnce = timed('pump', { to: wordOr(['on', 'off'], about('speed', quantity('number', { min: 0, max: 1.2 }))) });

const timeOfDay = textLike('a clock time "HH:MM"', /^\d\d:\d\d$/, (value) => parseTimeOfDay(value) !== undefined);
const pumpDaily = object({
  daily: about('on from the first, off from the second, and so on', wholeList(timeOfDay, { min: 1, max: 1440 })),
  do: word('pump'),
});

const isDaily = (value: unknown) => isObject(value) && Object.hasOwn(value, 'daily');

type PumpKeys = Value<typeof pumpOnce> | Value<typeof pumpDaily>;

const deeds = {
  pump: oneOf<PumpKeys>({ takes: isDaily, field: pumpDaily }, { takes: () => true, field: pumpOnce }),
  power: timed('power', { to: onOff, for: optional(quantity('time', { above: 0, max: 1e10 })) }),
  hose: timed('hose', { to: onOff, name: optional(about('every hose if left out', name)) }),
  autofill: timed('autofill', { to: onOff }),
  'bottom valve': timed('bottom valve', { to: share }),
  'top valve': timed('top valve', { to: share }),
  storm: timed('storm', {
    depth: quantity('length', { min: 0, max: 10 }),
    lasting: quantity('time', { above: 0, max: 1e7 }),
    shape: optional(word('even', 'scs2')),
  }),
  blockage: timed('blockage', { of: about('intake, a stone or a stream', name), to: share }),
  'clean filter': timed('clean filter', {}),
  'check valve': timed('check valve', { to: word('failed', 'sound') }),
  leak: timed('leak', { in: about('a basin', name), elevation, area: hole }),
  'pump out': timed('pump out', { flow: quantity('flow', { above: 0, max: 10 }), until: elevation }),
};

export const actions = list(tagged('do', deeds));
