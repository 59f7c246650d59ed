/**
 * Density of liquid water at 0.1 MPa, kg/m³.
 *
 * Kell (1975), J. Chem. Eng. Data 20(1), eq. for 0..150 °C at one atmosphere.
 * @param celsius temperature, °C; valid 0..100
 */
export function density(celsius: number): number {
  const t = celsius;
  const series =
    999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return series / (1 + 16.87985e-3 * t);
}

/**
 * Dynamic viscosity of liquid water at 0.1 MPa, Pa s.
 *
 * IAPWS SR6-08 (2011), "Liquid water at 0.1 MPa", explicit form.
 * @param celsius temperature, °C; valid −20..110
 */
export function dynamicViscosity(celsius: number): number {
  const r = (celsius + 273.15) / 300;
  return 1e-6 * (280.68 * r ** -1.9 + 511.45 * r ** -7.7 + 61.131 * r ** -19.6 + 0.45903 * r ** -40);
}

/** Kinematic viscosity of liquid water at 0.1 MPa, m²/s; valid 0..100 °C. */
export function kinematicViscosity(celsius: number): number {
  return dynamicViscosity(celsius) / density(celsius);
}
