/** A law made wrong in one place. */
export interface Mutation {
  readonly name: string;
  /** File in sim/laws. */
  readonly file: string;
  /** Source text that stands there once; what is between « and » is scaled. */
  readonly place: string;
  /** What stands there instead with its own mark, where the number is not spelled out in the source. */
  readonly instead: string | undefined;
  /** Whether a value from print must notice it; else a closed form or another library may. */
  readonly print: boolean;
}

type Places = readonly (readonly [name: string, file: string, place: string, instead?: string])[];

/** Laws for which figures are in print. */
const inPrint: Places = [
  ['ideal broad crest', 'crest.ts', 'IDEAL_CREST = (2 / 3) ** 1.5 * «Math.sqrt(GRAVITY)»'],
  ['integral along a crest', 'crest.ts', 'const free = «0.4» * width'],
  ['square-edged broad crest', 'crest.ts', 'out[0] = «c» * factor'],
  ['length of a broad crest', 'crest.ts', 'const ratio = «head / along»'],
  ['rounded nose', 'crest.ts', 'const factor = 1 + «0.63» * Math.min(rounding'],
  ['Manning flow', 'stream.ts', 'const perDepth = «conveyance» *'],
  ['Manning exponent', 'stream.ts', 'Math.cbrt(depth * depth)', 'depth ** («5 / 3» - 1)'],
  ['Manning n', 'stream.ts', 'Math.sqrt(slope)) / «manning»'],
  ['normal depth', 'stream.ts', 'conveyanceOfBed) ** «0.6»'],
  ['orifice', 'orifice.ts', 'out[0] = area * «Math.sqrt(2 * GRAVITY * head)»'],
  ['critical depth', 'sheet.ts', 'return «Math.cbrt((flowPerWidth * flowPerWidth) / GRAVITY)»'],
  ['type II at 11:45', 'rain.ts', '«0.357»'],
  ['type II at noon', 'rain.ts', '«0.663»'],
  ['rational method', 'rain.ts', 'return «coefficient» * rate'],
  ['Colebrook friction', 'friction.ts', 'out[0] = («LN10_HALF / w») ** 2'],
  ['Colebrook roughness', 'friction.ts', '(«3.7» * (2.51'],
  ['laminar friction in a pipe', 'pipe.ts', 'pair[0] = «64» * re'],
  ['turbulent friction in a pipe', 'frictionTable.ts', 'return { value: «pair[0]» * re * re'],
  ['Reynolds number', 'pipe.ts', 'const reynolds = «diameter / (area * viscosity)»'],
  ['velocity head', 'pipe.ts', 'const head = «1 / (2 * GRAVITY * area * area)»'],
  ['bore area', 'pipe.ts', 'const area = «(Math.PI * diameter * diameter) / 4»'],
  ['fully turbulent friction', 'fittings.ts', 'return «0.25» / Math.log10'],
  ['elbow 90°', 'fittings.ts', 'elbow90: «30»'],
  ['elbow 45°', 'fittings.ts', 'elbow45: «16»'],
  ['swing check', 'fittings.ts', 'checkSwing: «100»'],
  ['ball valve, straight through', 'fittings.ts', 'ballValve: «3»'],
  ['entrance', 'fittings.ts', 'entrance: «0.5»'],
  ['exit', 'fittings.ts', 'exit: «1.0»'],
  ['ball valve open', 'valve.ts', '10 ** («2.945» - 3.84'],
  ['ball valve by opening', 'valve.ts', '2.945 - «3.84» * opening'],
  ['cock', 'valve.ts', 'return «COCK_K[i]» *'],
  ['affinity of head', 'pump.ts', 'out[0] = «speed * speed» * pair[0]'],
  ['affinity of flow', 'pump.ts', 'curveHead(c, «flow / speed», pair)'],
  ['affinity of power', 'pump.ts', 'out[0] = «square * speed» * watts'],
  ['power by efficiency', 'pump.ts', 'const perHead = («density» * GRAVITY)'],
  ['standing pump', 'pump.ts', 'return («0.69» * pair[0]'],
  ['Ergun viscous', 'media.ts', 'return («150» * viscosity'],
  ['Ergun inertial', 'media.ts', 'return («1.75» * (1'],
  ['gap between plates', 'media.ts', 'const a = («12» * viscosity'],
  ['lift', 'media.ts', 'return «weight» /'],
  ['permittivity', 'media.ts', 'viscous: «ratio» /'],
  ['density', 'water.ts', 'return «series» /'],
  ['viscosity', 'water.ts', 'return «1e-6» * (280.68'],
  ['volume of a piece of profile', 'storage.ts', 'volume[i] + «((area[i] + end) / 2)» *'],
];

/** Laws that a closed form, a formula evaluated elsewhere or another library holds. */
const inClosedForm: Places = [
  ['Villemonte exponent', 'crest.ts', 'out[0] = rest ** «0.385»'],
  ['Villemonte chord', 'crest.ts', 'LEVEL_DIFFERENCE = «1e-4»'],
  ['seepage', 'seepage.ts', 'out[0] = «k» * (Math.max'],
  ['float valve', 'surface.ts', 'out[0] = «full» * Math.min'],
  ['evaporation', 'surface.ts', 'out[0] = «rate * area»;'],
  ['evaporation of a film', 'surface.ts', 'const FILM = «0.001»'],
  ['reach of a sheet', 'sheet.ts', '«(flowPerWidth / depth)» * Math.sqrt'],
  ['low-flow Manning n', 'stream.ts', 'return «0.32» * slope'],
  ['hole near rest', 'orifice.ts', 'out[1] = «area» * Math.sqrt((2 * GRAVITY) / LINEAR_HEAD)'],
  ['lip of an overflow pipe', 'orifice.ts', 'const LIP_CD = «1.08»'],
  ['mouth of an overflow pipe', 'orifice.ts', 'const OPENING_CD = «0.6»'],
  ['laminar friction factor', 'friction.ts', 'out[0] = «64» / reynolds'],
  ['transition', 'friction.ts', 'const m0 = «-WIDTH»'],
  ['short pipe', 'pipe.ts', 'const LEAST_LENGTH = «10»'],
  ['ball valve nearly shut', 'valve.ts', '«566» * (0.05'],
  ['curve between points', 'pump.ts', 'const c2 = «3» * rise'],
  ['slopes of a curve', 'pump.ts', '(secant[i - 1] + secant[i]) / «2»'],
  ['limit of slopes', 'pump.ts', 'slope[i] = («3» * a'],
  ['curve from the box', 'pump.ts', '(-«2» * head) / flow'],
  ['pump driven beyond no head', 'pump.ts', 'out[0] = -«standing» *'],
  ['Davies', 'media.ts', 'return («64» * viscosity'],
  ['Davies at density', 'media.ts', '1 + «56» * c'],
  ['losses at the ends of a gap', 'media.ts', 'const b = («1.5» +'],
  ['friction of a gap', 'media.ts', '+ («0.02» * length) / width)'],
  ['porosity where mats begin', 'media.ts', 'const FIBRE_FROM = «0.91»'],
  ['inverse of storage', 'storage.ts', 'const square = a * a + «2 * g» * rest'],
];

const listed = (places: Places, print: boolean): Mutation[] =>
  places.map(([name, file, place, instead]) => ({ name, file, place, instead, print }));

export const mutations: readonly Mutation[] = [...listed(inPrint, true), ...listed(inClosedForm, false)];
