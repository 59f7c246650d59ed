/** Dials of what fills the pond: its hoses and its autofill, which a site may be given and have taken away. */
import type { Display } from '../../sim/quantity/index.ts';
import { valueAt, withValueAt } from '../../sim/studies/place.ts';
import {
  type Choice,
  type Dial,
  type Dialed,
  type Edits,
  figure,
  lowest,
  option,
  type Ruler,
  ruler,
} from './dials-kinds.ts';
import { underRim } from './dials-water.ts';
import { asTyped, newlyWritten, shownAs } from './typed.ts';

const AUTOFILL = 'supply.autofill';
const HOSE = 'supply.hose';

/**
 * What a site is given: a garden hose and a small float valve as they are sold. Common practice, no source; the dial
 * says so, and a bucket test replaces them.
 */
const GIVEN_HOSE: Readonly<Record<Display, string>> = { metric: '15 L/min', us: '4 gpm' };
const GIVEN_FLOAT: Readonly<Record<Display, string>> = { metric: '5 L/min', us: '1.3 gpm' };
/** From shut to full flow a small float valve sinks by about this, m. Common practice, no source. */
const TRAVEL = 0.025;
/** Where a pond has no mark yet the float shuts this far under its edge, m. Our default. */
const UNMARKED = 0.1;
/** A hose's ruler goes at least this far, m³/s. */
const MOST = 2e-4;

/** Takes away a key of `supply`, and that part itself where the site had none before. */
function without({ file, opened }: Dialed, place: string): Edits {
  const others = Object.keys((valueAt(file, 'supply') as object | undefined) ?? {}).filter(
    (key) => `supply.${key}` !== place,
  );
  const whole = others.length === 0 && valueAt(opened, 'supply') === undefined;
  return [[whole ? 'supply' : place, undefined]];
}

/** Whether something is done with it later on, so that it can't be taken away. */
function isUsed(file: unknown, deed: string): boolean {
  const actions = valueAt(file, 'actions');
  return Array.isArray(actions) && actions.some((action) => valueAt(action, 'do') === deed);
}

export function autofill(site: Dialed): Choice {
  const { file, opened } = site;
  const has = valueAt(file, AUTOFILL) !== undefined;
  const had = valueAt(opened, AUTOFILL) !== undefined;
  const gives = had ? undefined : givenAutofill(site);
  const none = option(site, 'none', !has, !had, without(site, AUTOFILL));
  return {
    kind: 'choice',
    name: 'autofill',
    options: [
      ...(isUsed(file, 'autofill') && has ? [] : [none]),
      option(site, 'at a level', has, had, has ? [] : [[AUTOFILL, gives?.value]]),
    ],
    note: has || gives === undefined ? '' : gives.says,
  };
}

/** A float that shuts at the fill mark, written as the mark is. */
function givenAutofill({ file, now, base }: Dialed): { readonly value: unknown; readonly says: string } {
  const { display } = now;
  const mark = now.pond.fillMark ?? lowest(base.pond.rim.crest) - UNMARKED;
  const typed = valueAt(file, 'pond.fillMark');
  const before = typeof typed === 'string' ? typed : newlyWritten(mark, 'length', display);
  const write = asTyped({ display, kept: true });
  const level = (z: number): unknown => write(z, before, 'length', false);
  const value = { flow: GIVEN_FLOAT[display], set: level(mark), low: level(mark - TRAVEL) };
  const at = shownAs(value.set, 'length', { display, kept: false });
  const where = now.pond.fillMark === undefined ? at : `the fill mark, ${at}`;
  return { value, says: `one put in gives ${value.flow} until it shuts at ${where}: a guess until a bucket test` };
}

export function float(site: Dialed): Ruler | undefined {
  if (valueAt(site.file, AUTOFILL) === undefined) return undefined;
  const setting = { kind: 'float', place: AUTOFILL } as const;
  return ruler(site, 'autofill shuts at', setting, underRim(site), site.now.autofill?.set);
}

export function autofillFlow(site: Dialed): Ruler | undefined {
  if (valueAt(site.file, AUTOFILL) === undefined) return undefined;
  const most = Math.max(2 * (site.base.autofill?.flow ?? 0), MOST);
  return ruler(site, 'autofill gives', figure(`${AUTOFILL}.flow`, 'flow'), [0, most], site.now.autofill?.flow);
}

/** A hose is open or shut at the start; the only one may be left out too. Each has its flow. */
export function hoses(site: Dialed): (Dial | undefined)[] {
  const given = valueAt(site.file, HOSE);
  if (!Array.isArray(given)) return [hoseChoice(site, HOSE, 'hose'), hoseFlow(site, HOSE, 0, 'hose')];
  return given.flatMap((each, i) => {
    const name = String(valueAt(each, 'name') ?? `hose ${i + 1}`);
    return [hoseChoice(site, `${HOSE}[${i}]`, name), hoseFlow(site, `${HOSE}[${i}]`, i, name)];
  });
}

function hoseFlow(site: Dialed, place: string, i: number, name: string): Ruler | undefined {
  if (valueAt(site.file, place) === undefined) return undefined;
  const most = Math.max(2 * (site.base.hoses[i]?.flow ?? 0), MOST);
  return ruler(site, `${name}, by a bucket test`, figure(`${place}.flow`, 'flow'), [0, most], site.now.hoses[i]?.flow);
}

function hoseChoice(site: Dialed, place: string, name: string): Choice {
  const { file, opened, now } = site;
  const [stands, stood] = [stateOf(file, place), stateOf(opened, place)];
  const put = (on: true | undefined): Edits => {
    if (stands !== 'none') return [[`${place}.on`, on]];
    const hose = (valueAt(opened, place) as object | undefined) ?? { flow: GIVEN_HOSE[now.display] };
    return [[place, withValueAt(hose, 'on', on)]];
  };
  const mayGo = place === HOSE && (stands === 'none' || !isUsed(file, 'hose'));
  const says = `one put in gives ${GIVEN_HOSE[now.display]}: a guess until a bucket test`;
  return {
    kind: 'choice',
    name: `${name} at the start`,
    options: [
      ...(mayGo ? [option(site, 'none', stands === 'none', stood === 'none', without(site, place))] : []),
      option(site, 'shut', stands === 'shut', stood === 'shut', put(undefined)),
      option(site, 'open', stands === 'open', stood === 'open', put(true)),
    ],
    note: stands === 'none' && stood === 'none' ? says : '',
  };
}

function stateOf(file: unknown, place: string): 'none' | 'shut' | 'open' {
  if (valueAt(file, place) === undefined) return 'none';
  return valueAt(file, `${place}.on`) === true ? 'open' : 'shut';
}
