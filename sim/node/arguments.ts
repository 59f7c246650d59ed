import { parseArgs } from 'node:util';
import { type Display, parseQuantity } from '../quantity/index.ts';
import { nearest } from '../scenario/nearest.ts';
import type { Problem } from '../scenario/scenario.ts';
import { momentProblems } from './dye.ts';
import { type FillWishes, wishProblems } from './fill.ts';
import { type MapWishes, mapProblems } from './map.ts';

const COMMANDS = ['run', 'balance', 'fill', 'leak', 'map', 'dye', 'sketch', 'schema'] as const;
export type CommandName = (typeof COMMANDS)[number];

export interface Call {
  readonly command: CommandName;
  /** A path, or '-' for standard input; '' for the schema, which needs none. */
  readonly file: string;
  /** The log of levels to be read, or '-' for standard input; '' for every other command. */
  readonly log: string;
  readonly json: boolean;
  readonly display: Display | undefined;
  readonly csv: string | undefined;
  /** Spacing of the CSV's rows, s. */
  readonly every: number | undefined;
  readonly fill: Omit<FillWishes, 'json' | 'csv'>;
  readonly map: Omit<MapWishes, 'json' | 'csv'>;
  /** Moment of the run, as it was typed. */
  readonly at: string | undefined;
  /** Levels were read on a ruler that stands in the water: a greater figure is a higher level. */
  readonly ruler: boolean;
}

export type CallReading =
  | { readonly kind: 'call'; readonly call: Call }
  | { readonly kind: 'help' }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/** What each option wants to be given; '' nothing. */
const OPTIONS: Readonly<Record<string, { readonly wants: string; readonly of: readonly CommandName[] }>> = {
  json: { wants: '', of: COMMANDS },
  display: { wants: 'us or metric', of: ['run', 'balance', 'fill', 'leak', 'map', 'dye', 'sketch'] },
  csv: { wants: 'the file to write', of: ['run', 'fill', 'map', 'dye'] },
  every: { wants: 'a time, as 1min', of: ['run'] },
  ics: { wants: 'the file to write', of: ['fill'] },
  zone: { wants: 'a time zone, as Europe/Berlin', of: ['fill'] },
  pump: { wants: '', of: ['fill'] },
  by: { wants: 'a clock time HH:MM', of: ['fill'] },
  nights: { wants: 'two clock times, as 22:00-07:00', of: ['fill'] },
  ruler: { wants: '', of: ['leak'] },
  plane: { wants: 'valves or flow', of: ['map'] },
  bottom: { wants: 'openings, as 0,0.5,1', of: ['map'] },
  top: { wants: 'openings, as 0,0.5,1', of: ['map'] },
  at: { wants: 'a time, as 2h', of: ['dye'] },
  help: { wants: '', of: COMMANDS },
};

type Given = Readonly<Record<string, string | undefined>>;

/** What the command is called with, or all that is wrong with the call at once. */
export function readCall(args: readonly string[]): CallReading {
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(
      Object.entries(OPTIONS).map(([name, { wants }]) => [
        name,
        { type: wants === '' ? 'boolean' : 'string' } as const,
      ]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const options = tokens.filter((token) => token.kind === 'option');
  if (options.some(({ name }) => name === 'help')) return { kind: 'help' };
  const words = tokens.flatMap((token) => (token.kind === 'positional' ? [token.value] : []));
  const problems = [...wordProblems(words), ...optionProblems(options, words[0])];
  const given: Given = Object.fromEntries(options.map(({ name, value }) => [name, value ?? '']));
  problems.push(
    ...valueProblems(given),
    ...wishProblems(wishesOf(given)),
    ...mapProblems(planeOf(given)),
    ...momentProblems(given['at']),
  );
  if (problems.length > 0) return { kind: 'refused', problems };
  return { kind: 'call', call: callOf(words, given) };
}

function callOf(words: readonly string[], given: Given): Call {
  const every = given['every'] === undefined ? undefined : parseQuantity(given['every'], 'time');
  return {
    command: words[0] as CommandName,
    file: words[1] ?? '',
    log: words[2] ?? '',
    json: given['json'] !== undefined,
    display: given['display'] as Display | undefined,
    csv: given['csv'],
    every: every?.ok ? every.value : undefined,
    fill: wishesOf(given),
    map: planeOf(given),
    at: given['at'],
    ruler: given['ruler'] !== undefined,
  };
}

const wishesOf = (given: Given): Call['fill'] => ({
  ics: given['ics'],
  zone: given['zone'],
  pump: given['pump'] !== undefined,
  by: given['by'],
  nights: given['nights'],
});

const planeOf = (given: Given): Call['map'] => ({
  plane: given['plane'],
  bottom: given['bottom'],
  top: given['top'],
});

function wordProblems([command, ...rest]: readonly string[]): Problem[] {
  const known = (COMMANDS as readonly string[]).includes(command ?? '');
  const problems: Problem[] = [];
  if (!known) {
    const found = command === undefined ? 'nothing' : JSON.stringify(command);
    problems.push({ place: 'the command', found, wanted: `one of ${COMMANDS.join(', ')}` });
  }
  const most = command === 'schema' ? 0 : command === 'leak' ? 2 : 1;
  if (known && most > 0 && (rest[0] ?? '') === '') {
    problems.push({ place: 'the file', found: 'nothing', wanted: 'a scenario file, or - for standard input' });
  } else if (known && most > 1 && (rest[1] ?? '') === '') {
    problems.push({ place: 'the log', found: 'nothing', wanted: 'a text of levels, or - for standard input' });
  }
  if (known && most > 1 && rest[0] === '-' && rest[1] === '-') {
    problems.push({
      place: 'the log',
      found: 'standard input a second time',
      wanted: 'the file or the log by its path',
    });
  }
  if (known && rest.length > most) {
    const found = rest.slice(most).map((word) => JSON.stringify(word));
    problems.push({ place: 'the call', found: `${found.join(' ')} left over`, wanted: MOST_FILES[most] });
  }
  return problems;
}

const MOST_FILES = ['no file', 'one file', 'a file and a log'] as const;

interface Option {
  readonly name: string;
  readonly rawName: string;
  readonly value: string | undefined;
  readonly inlineValue: boolean | undefined;
}

function optionProblems(options: readonly Option[], command: string | undefined): Problem[] {
  return options.flatMap((option, i): Problem[] => {
    const { name, rawName, value, inlineValue } = option;
    const known = Object.hasOwn(OPTIONS, name) && rawName.startsWith('--') ? OPTIONS[name] : undefined;
    if (!known) return [{ place: rawName, found: 'an option that is not known', wanted: optionNames(name) }];
    const wrong = (found: string, wanted: string): Problem[] => [{ place: rawName, found, wanted }];
    if (options.findIndex((other) => other.name === name) < i) return wrong('it a second time', 'it once');
    const foreign =
      (COMMANDS as readonly string[]).includes(command ?? '') && !known.of.includes(command as CommandName);
    if (foreign) return wrong(`it with ${command}`, `it with ${known.of.join(' or ')} alone`);
    if (known.wants === '') return value === undefined ? [] : wrong(JSON.stringify(value), 'no value');
    // A forgotten value would swallow the option that follows.
    if (!inlineValue && value?.startsWith('-')) return wrong(value, known.wants);
    return value ? [] : wrong('nothing', known.wants);
  });
}

function optionNames(mistyped: string): string {
  const names = Object.keys(OPTIONS);
  const meant = nearest(mistyped, names);
  return meant === undefined ? `one of ${names.map((name) => `--${name}`).join(', ')}` : `--${meant}, perhaps`;
}

function valueProblems({ display, csv, every }: Given): Problem[] {
  const problems: Problem[] = [];
  if (display && display !== 'us' && display !== 'metric') {
    problems.push({ place: '--display', found: JSON.stringify(display), wanted: 'us or metric' });
  }
  if (every) {
    const spacing = parseQuantity(every, 'time');
    if (!spacing.ok) problems.push({ place: '--every', found: spacing.found, wanted: 'a time with its unit, as 1min' });
    else if (spacing.value <= 0) problems.push({ place: '--every', found: every, wanted: 'a time above 0' });
    if (csv === undefined) problems.push({ place: '--every', found: 'it without --csv', wanted: 'a file by --csv' });
  }
  return problems;
}
