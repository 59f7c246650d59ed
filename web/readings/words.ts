/** What readings came to, in words and figures. Pure. */
import { type Display, formatFlow, formatNumber } from '../../sim/quantity/index.ts';
import type { Banded, Fitted } from '../../sim/readings/index.ts';

/** What was found has just been put into the site. */
export const PUT_IN = 'They stand in the site: everything is answered with them. Undo takes them out again.';

/** '222 L/min, 214 to 230'. */
export function flowWords({ value, band: [low, high] }: Banded, display: Display): string {
  const unit = / [^ ]+$/;
  return `${formatFlow(value, display)} (${formatFlow(low, display, value).replace(unit, '')} to ${formatFlow(high, display, value)})`;
}

/** A fitted value as the trade reads it: a share of the pump's curve, a handle's angle, a bare coefficient. */
export function fittedFigure({ kind }: Pick<Fitted, 'kind'>, value: number): string {
  if (kind === 'pump') return `${formatNumber(100 * value)} %`;
  if (kind === 'valve') return `${formatNumber(90 * (1 - value))}°`;
  if (kind === 'manning') return formatNumber(value, 3);
  return kind === 'cd' ? formatNumber(value, 2) : String(Number(value.toPrecision(3)));
}

export function fittedBand(fitted: Fitted, { band }: Banded = fitted): string {
  // An opening that grows is an angle that falls.
  const [low, high] = fitted.kind === 'valve' ? [band[1], band[0]] : band;
  return `${fittedFigure(fitted, low)} to ${fittedFigure(fitted, high)}`;
}

const UNITS: Readonly<Partial<Record<Fitted['kind'], string>>> = {
  pump: 'of the heads on its box',
  valve: 'from along the pipe',
};

/** 'The pump’s curve, of the heads on its box'. */
export function fittedName({ words, kind }: Fitted): string {
  const unit = UNITS[kind];
  return unit === undefined ? words : `${words}, ${unit}`;
}

/** A band that the readings made narrower by this or more is worth a row: our choice. */
const NARROWER = 0.9;

/** Whether the readings say anything of a value. */
export function isTold({ band, before }: Fitted): boolean {
  const width = ([low, high]: readonly [number, number]): number => high - low;
  return width(band) <= NARROWER * width(before.band) || band[0] > before.value || band[1] < before.value;
}
