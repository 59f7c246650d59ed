import { formatNumber } from '../../sim/quantity/format.ts';
import type { Display } from '../../sim/quantity/index.ts';
import { type Mark, path, segment, words } from './marks.ts';
import { exaggeration, type Scale } from './scale.ts';

const FOOT = 0.3048;
/** Steps a ruler may have, of its unit. */
const STEPS = [0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10, 20, 50];
const MINOR: Readonly<Record<number, number>> = { 0.25: 5, 2: 4 };

const unitOf = (display: Display): { size: number; name: string; short: string } =>
  display === 'us' ? { size: FOOT, name: 'feet', short: 'ft' } : { size: 1, name: 'meters', short: 'm' };

const stepFor = (pixels: number, least: number): number => STEPS.find((s) => s * pixels >= least) ?? 100;

/** Elevations on the left: ticks, figures with their sign, the unit below. */
export function datumMarks(scale: Scale, display: Display): Mark[] {
  const unit = unitOf(display);
  const per = unit.size * scale.a * scale.k;
  const step = stepFor(per, 40);
  const minor = step / (MINOR[step] ?? 5);
  const top = scale.top;
  const x = scale.left - 4;
  const value = (y: number): number => (scale.y(0) - y) / per;
  const low = Math.ceil(value(scale.bottom) / minor);
  const high = Math.floor(value(top) / minor);
  const each = Math.round(step / minor);
  let ticks = '';
  const marks: Mark[] = [];
  for (let i = low; i <= high; i++) {
    const y = scale.y(i * minor * unit.size);
    const major = i % each === 0;
    ticks += segment(x - (major ? 7 : 3.5), y, x, y);
    if (major) marks.push(words(x - 10, y + 4, signed(i * minor, step), 'axis', 'end'));
  }
  const line = segment(x, scale.y(high * minor * unit.size), x, scale.y(low * minor * unit.size));
  const foot = words(x - 8, scale.bottom + 16, unit.name, 'note', 'end');
  return [path(line + ticks, 'axis-line'), ...marks, foot];
}

function signed(value: number, step: number): string {
  const text = formatNumber(value, step < 0.1 || step === 0.25 ? 2 : step < 1 ? 2 : 1);
  return value > 1e-9 ? `+${text}` : text;
}

/** How heights and flows are drawn, in words. */
export const scaleWords = (scale: Scale): string =>
  scale.closeUp
    ? 'true proportions, only the gap drawn up to eight times as wide; ribbons as wide as their flow'
    : `${exaggeration(scale.k)}; ribbons in the pipes are as wide as their flow`;

/** A bar of true lengths, and in words how the heights are drawn; a strip has the words below it, where they stay. */
export function lengthMarks(scale: Scale, display: Display): Mark[] {
  const unit = unitOf(display);
  const per = unit.size * scale.a;
  const step = stepFor(per, 44);
  const y = scale.bottom + 30;
  const x = scale.left;
  const count = 2;
  const end = x + count * step * per;
  let d = segment(x, y, end, y);
  const marks: Mark[] = [];
  for (let i = 0; i <= count; i++) {
    const at = x + i * step * per;
    d += segment(at, y - 4, at, y);
    const text = formatNumber(i * step, Number.isInteger(i * step) ? 0 : step === 0.25 ? 2 : 1);
    marks.push(words(at, y - 7, i === count ? `${text} ${unit.short}` : text, 'axis', 'middle'));
  }
  const said = scale.strip ? [] : [words(end + 22, y - 1, scaleWords(scale), 'note')];
  return [path(d, 'axis-line'), ...marks, ...said];
}
