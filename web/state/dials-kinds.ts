/** What a dial is: a figure on a ruler, or a choice of words; and how one is made of what the file says. */
import {
  type DimensionName,
  type Display,
  formatArea,
  formatFlow,
  formatLevel,
  formatPercent,
} from '../../sim/quantity/index.ts';
import type { Scenario } from '../../sim/scenario/scenario.ts';
import { valueAt } from '../../sim/studies/place.ts';
import { dimensionOf, placeOf, type Setting, settingIn } from '../../sim/studies/setting.ts';
import { type Manner, newlyWritten, shownAs, stepOf, typeset, unitTyped } from './typed.ts';

export interface Ruler {
  readonly kind: 'ruler';
  readonly name: string;
  readonly setting: Setting;
  /** SI; the last good one where the file's can't be read. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** What the field shows. */
  readonly text: string;
  readonly note: string;
  /** How its figure goes on. */
  readonly manner: Manner;
}

/** Places of the file and what is put there; undefined takes the key away. */
export type Edits = readonly (readonly [place: string, value: unknown])[];

export interface Option {
  readonly word: string;
  readonly chosen: boolean;
  readonly edits: Edits;
}

export interface Choice {
  readonly kind: 'choice';
  readonly name: string;
  readonly options: readonly Option[];
  readonly note: string;
}

export type Dial = Ruler | Choice;

export interface Dialed {
  /** The site as it last answered, and as it was opened. */
  readonly now: Scenario;
  readonly base: Scenario;
  /** The file as it is being edited, and as it was opened. */
  readonly file: unknown;
  readonly opened: unknown;
  /** The texts typed into dials, by place. */
  readonly typed: ReadonlyMap<string, string>;
}

export type Span = readonly [low: number, high: number];

/**
 * A ruler over a span, widened to take in how its setting stands in the site.
 *
 * @param given the value in the site, where the file's can't be read or isn't there
 */
export function ruler(
  site: Dialed,
  name: string,
  setting: Setting,
  [low, high]: Span,
  given: number | undefined,
  note = '',
): Ruler | undefined {
  const { file, now, typed } = site;
  const figure = settingIn(file, setting) ?? given;
  if (figure === undefined) return undefined;
  const place = placeOf(file, setting);
  const raw = place === undefined ? undefined : valueAt(file, place);
  const dimension = dimensionOf(setting);
  const text = place === undefined ? undefined : typed.get(place);
  const kept = text !== undefined && unitTyped(raw, dimension) === unitTyped(text, dimension);
  const manner: Manner = { display: now.display, kept };
  const ends = [Math.min(low, given ?? low), Math.max(high, given ?? high)] as const;
  return {
    kind: 'ruler',
    name,
    setting,
    value: Math.min(ends[1], Math.max(ends[0], figure)),
    low: ends[0],
    high: ends[1],
    step: stepOf(raw, dimension, manner),
    text: textOf(raw, text, figure, dimension, manner),
    note,
    manner,
  };
}

function textOf(raw: unknown, typed: string | undefined, figure: number, dimension: DimensionName, manner: Manner) {
  if (raw === typed && unitTyped(raw, dimension) !== undefined) return `${raw}`.replace(/^-/, '\u2212');
  return shownAs(raw ?? figure, dimension, manner);
}

/** A figure in the display's units, as a dial tells it. */
export function wordsOf(value: number, dimension: DimensionName, display: Display): string {
  if (dimension === 'flow') return formatFlow(value, display);
  if (dimension === 'length') return typeset(formatLevel(value, display));
  if (dimension === 'area') return formatArea(value, display);
  if (dimension === 'volume') return newlyWritten(value, dimension, display);
  return formatPercent(value);
}

export const figure = (place: string, dimension: DimensionName): Setting => ({ kind: 'figure', place, dimension });

/** An option, which puts back what the file was opened with where that was this very option. */
export function option(site: Dialed, word: string, chosen: boolean, wasChosen: boolean, edits: Edits): Option {
  const asOpened = edits.map(([place]) => [place, valueAt(site.opened, place)] as const);
  return { word, chosen, edits: wasChosen ? asOpened : edits };
}

export const lowest = (crest: readonly (readonly [number, number])[]): number => Math.min(...crest.map(([, z]) => z));
