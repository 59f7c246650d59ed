export * from './clock.ts';
export * from './format.ts';
export { type Fault, type Parsed, parseQuantity } from './parse.ts';
export { DIMENSIONS, type DimensionName, fromSI, toSI, unitOf, unitsSentence } from './units.ts';
