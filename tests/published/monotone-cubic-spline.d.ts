declare module '@yr/monotone-cubic-spline' {
  /** Control points: [x, y] of the start, [x1, y1, x2, y2, x, y] of the first piece, [x2, y2, x, y] of the others. */
  export const points: (points: readonly (readonly [number, number])[]) => number[][];
}
