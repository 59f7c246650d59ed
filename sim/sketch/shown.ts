import {
  type DimensionName,
  type Display,
  formatArea,
  formatDepthRate,
  formatFlow,
  formatLength,
  formatPercent,
} from '../quantity/index.ts';

const US_UNITS =
  /["'″′”]|(?:^|[\d\s])(?:in|inch|inches|ft|feet|foot|gal|gallons?|gpm|gph|in2|ft2|ft3)\b|in\/(?:d|day|week)/i;

/** Whether anything in a value is typed in the units of the United States. */
export function typedInUs(value: unknown): boolean {
  if (typeof value === 'string') return US_UNITS.test(value);
  return typeof value === 'object' && value !== null && Object.values(value).some(typedInUs);
}

export const displayOf = (value: unknown): Display => (typedInUs(value) ? 'us' : 'metric');

/** A figure of the sketch as a sentence has it. */
export function shown(value: number, dimension: DimensionName, display: Display): string {
  switch (dimension) {
    case 'length':
      return formatLength(value, display);
    case 'area':
      return formatArea(value, display);
    case 'flow':
      return formatFlow(value, display);
    case 'depthRate':
      return formatDepthRate(value, display);
    case 'fraction':
      return formatPercent(value);
    default:
      return String(value);
  }
}
