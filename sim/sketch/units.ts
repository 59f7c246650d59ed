/** Exact units of the tape, the bucket and the box, in SI (NIST SP 811, Appendix B). */
export const INCH = 0.0254;
export const FOOT = 0.3048;
export const GALLON = 3.785411784e-3;
export const GPM = GALLON / 60;
export const GPH = GALLON / 3600;
const MM = 0.001;
export const MM_PER_DAY = MM / 86400;
export { MM };

/** Without the last digits of a sum, so that a figure of a file can be read. */
export const tidy = (x: number): number => Number(x.toPrecision(9));
