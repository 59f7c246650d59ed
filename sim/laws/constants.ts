/** Standard acceleration of gravity, m/s² (CGPM 1901, as in ISO 80000-3). */
export const GRAVITY = 9.80665;
