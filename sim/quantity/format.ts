import { DIMENSIONS, type DimensionName, fromSI, unitOf } from './units.ts';

/** How figures are shown to people; nothing is computed in it. */
export type Display = 'us' | 'metric';

const MINUS = '\u2212';
const INCH = 0.0254;
const FOOT = 0.3048;
const GALLON = 0.003785411784;

/** A value as a file has it, "2.5 gpm": reading it back gives the value to the last digit or two. Any unit of the dimension. */
export function quantityText(value: number, dimension: DimensionName, unit: string): string {
  const known = unitOf(dimension, unit);
  if (!known) throw new RangeError(`${unit} is no unit of ${DIMENSIONS[dimension].title}`);
  return `${Number(fromSI(value, known).toPrecision(15))} ${unit}`;
}

/** Fixed decimals, thousands set apart by commas, a true minus sign: −8,458.0. */
export function formatNumber(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) return 'none';
  const rounded = Math.abs(value).toFixed(decimals);
  const [whole = '0', part] = rounded.split('.');
  // toFixed leaves exponents to figures above 1e21; they have no thousands to set apart.
  const grouped = whole.includes('e') ? whole : whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  const sign = value < 0 && Number(rounded) !== 0 ? MINUS : '';
  return part === undefined ? `${sign}${grouped}` : `${sign}${grouped}.${part}`;
}

/** About `digits` significant figures, at least a whole number. */
function figures(value: number, digits = 3): string {
  const size = Math.abs(value);
  const before = size >= 1 ? Math.floor(Math.log10(size)) + 1 : 1;
  return formatNumber(value, Math.max(0, Math.min(6, digits - before)));
}

/**
 * A gap, a grain or a head across media in m, too small for eighths of an inch: '2.5 mm', '0.10 in'; what would round
 * to nothing as 'less than 0.1 mm', 'less than 0.01 in'.
 */
export function formatFine(value: number, display: Display): string {
  if (!Number.isFinite(value)) return 'none';
  const [size, decimals, unit] = display === 'us' ? [INCH, 2, 'in'] : [1e-3, 1, 'mm'];
  const least = 10 ** -decimals;
  const shown = value / size;
  if (value === 0) return `0 ${unit}`;
  if (value > 0 && shown < least / 2) return `less than ${least} ${unit}`;
  // A gap of 5 mm is no finer known for being written 5.0 mm; hundredths of an inch are read off as such.
  const whole = Number.isInteger(Number(shown.toFixed(decimals))) || Math.abs(shown) >= 99.95;
  return `${formatNumber(shown, whole && display === 'metric' ? 0 : decimals)} ${unit}`;
}

/** An eighth that misses a small length by more than this share of it is not told. */
const OFF = 0.15;

/** Inches to the nearest eighth, '4 7/8 in'; from 2 ft up in feet, '3 ft 6 in'; what an eighth would falsify in hundredths. */
function inches(value: number): string {
  const size = Math.abs(value) / INCH;
  const sign = value < 0 ? MINUS : '';
  if (size < 0.005) return '0 in';
  const eighths = Math.round(size * 8);
  if (Math.abs(eighths / 8 - size) > OFF * size) return `${sign}${size.toFixed(2)} in`;
  const feet = eighths >= 24 * 8 ? Math.floor(eighths / 96) : 0;
  const left = eighths - feet * 96;
  if (feet > 0 && left === 0) return `${sign}${formatNumber(feet)} ft`;
  return `${sign}${feet > 0 ? `${formatNumber(feet)} ft ` : ''}${mixed(left)} in`;
}

/** Eighths as a whole number and a fraction in lowest terms. */
function mixed(eighths: number): string {
  const whole = Math.floor(eighths / 8);
  let top = eighths - whole * 8;
  if (top === 0) return String(whole);
  let bottom = 8;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** A length, rise or margin in m: '64 mm', '9.7 mm', '2.40 m'; '2 1/2 in', '3 ft 6 in'. */
export function formatLength(value: number, display: Display): string {
  if (!Number.isFinite(value)) return 'none';
  if (display === 'us') return inches(value);
  const size = Math.abs(value);
  if (size < 0.00995) return `${formatNumber(value * 1000, 1)} mm`;
  return size < 0.9995 ? `${formatNumber(value * 1000)} mm` : `${formatNumber(value, 2)} m`;
}

/** An elevation in m, to the millimeter or the eighth of an inch: '−124 mm', '104.350 m'; '−4 7/8 in'. */
export function formatLevel(value: number, display: Display): string {
  if (!Number.isFinite(value)) return 'none';
  if (display === 'us') return inches(value);
  return Math.abs(value) < 0.9995 ? `${formatNumber(value * 1000)} mm` : `${formatNumber(value, 3)} m`;
}

/** A pump's or pipe's head in m: '2.48 m', '8.1 ft'. */
export function formatHead(value: number, display: Display): string {
  return display === 'us' ? `${formatNumber(value / FOOT, 1)} ft` : `${formatNumber(value, 2)} m`;
}

/**
 * A flow in m³/s: L/min, from 1,000 of them m³/h; gpm to 20, above gph as pumps are sold.
 *
 * @param beside a flow whose unit it takes, so that the two compare at a glance
 */
export function formatFlow(value: number, display: Display, beside = value): string {
  if (display === 'us') {
    const gpm = (value * 60) / GALLON;
    const small = Math.abs((beside * 60) / GALLON) < 20;
    return small ? `${figures(gpm, 2)} gpm` : `${formatNumber(Math.round(gpm * 6) * 10)} gph`;
  }
  const small = Math.abs(beside * 60000) < 999.5;
  return small ? `${figures(value * 60000)} L/min` : `${figures(value * 3600)} m³/h`;
}

/** A volume in m³: '51 L', '8,458 L', '120 m³' from 100 m³ up; '2,234 gal' (US). */
export function formatVolume(value: number, display: Display): string {
  if (display === 'us') return `${smallOrWhole(value / GALLON)} gal`;
  return Math.abs(value) < 100 ? `${smallOrWhole(value * 1000)} L` : `${formatNumber(value)} m³`;
}

/** One decimal under 10 where it says something, else none. */
function smallOrWhole(value: number): string {
  const decimals = Math.abs(value) < 9.95 && Math.abs(value) >= 0.05 ? 1 : 0;
  return formatNumber(value, decimals);
}

/** An area in m². */
export function formatArea(value: number, display: Display): string {
  return display === 'us' ? `${figures(value / FOOT ** 2)} ft²` : `${figures(value)} m²`;
}

/** A speed of water in m/s. */
export function formatSpeed(value: number, display: Display): string {
  return display === 'us' ? `${formatNumber(value / FOOT, 1)} ft/s` : `${formatNumber(value, 2)} m/s`;
}

/** A loss or rain of depth a time, m/s: '6.0 mm/d', '1.7 in/week'. */
export function formatDepthRate(value: number, display: Display): string {
  return display === 'us'
    ? `${formatNumber((value * 604800) / INCH, 2)} in/week`
    : `${formatNumber(value * 86400000, 1)} mm/d`;
}

/** A temperature in °C. */
export function formatTemperature(value: number, display: Display): string {
  return display === 'us' ? `${formatNumber(value * 1.8 + 32)} °F` : `${formatNumber(value)} °C`;
}

/** A fraction: 0.054 is '5.4 %', 0.62 is '62 %'. */
export function formatPercent(value: number): string {
  return `${formatNumber(value * 100, Math.abs(value) < 0.0995 ? 1 : 0)} %`;
}

/** Energy in J, as it is billed. */
export function formatEnergy(value: number): string {
  return `${figures(value / 3.6e6)} kWh`;
}

/** A concentration in kg/m³: '3.2 mg/L'. */
export function formatConcentration(value: number): string {
  const milligrams = value * 1000;
  const decimals = milligrams >= 100 ? 0 : milligrams >= 1 ? 1 : 3;
  return `${formatNumber(milligrams, decimals)} mg/L`;
}
