/**
 * How the marks of the plots look: one table, from which the page's rules, the SVG file and the painted picture are
 * made. Colors are the page's own by name; the light ones stand in where no page is around.
 */

const LIGHT = {
  paper: '#f5f0e5',
  paper2: '#fcf9f2',
  ink: '#211f1b',
  ink2: '#575146',
  rule: '#d8ceba',
  water: '#14588a',
  wash: '#d6e4e8',
  brick: '#9c2f1b',
} as const;

export type Color = keyof typeof LIGHT;

export interface Look {
  readonly fill?: Color;
  readonly stroke?: Color;
  /** Line width, px at the usual weight of lines. */
  readonly width?: number;
  readonly dash?: readonly number[];
  /** Of a text, px. */
  readonly size?: number;
  readonly italic?: boolean;
  readonly bold?: boolean;
  /** Ground that keeps a text clear of lines, px round it. */
  readonly halo?: number;
}

const line = (stroke: Color, width: number, dash?: readonly number[]): Look => ({
  stroke,
  width,
  ...(dash ? { dash } : {}),
});
const text = (fill: Color, size: number, more: Look = {}): Look => ({ fill, size, halo: 3, ...more });

export const LOOKS = {
  ground: { fill: 'paper' },
  opened: { fill: 'paper2' },
  hair: line('rule', 0.7),
  axis: line('ink2', 0.8),
  fan: line('ink2', 0.7),
  sliver: { fill: 'water' },
  wash: { fill: 'wash' },
  subject: line('water', 2),
  line: line('ink', 1),
  other: line('ink', 1.1, [8, 4]),
  failing: line('brick', 1.3, [8, 4]),
  edge: line('ink', 0.9, [9, 3, 1.5, 3]),
  wanted: line('ink', 0.9, [5, 3]),
  mark: line('ink', 0.9, [1.5, 2.5]),
  leader: line('ink2', 0.6),
  measure: line('ink', 1),
  dot: { fill: 'ink' },
  title: text('ink', 15),
  unit: text('ink2', 12, { italic: true }),
  tick: text('ink2', 12),
  anchored: text('ink', 12, { bold: true }),
  note: text('ink2', 12, { italic: true }),
  name: text('ink', 13, { italic: true }),
  figure: text('ink', 12.5),
  'water-name': text('water', 13, { italic: true }),
  'failing-name': text('brick', 13, { italic: true }),
  playhead: line('ink', 1.3),
  ring: { fill: 'paper', stroke: 'ink', width: 1.3 },
} as const satisfies Record<string, Look>;

export type LookName = keyof typeof LOOKS;

/** A look by its name, as loosely typed as it is used. */
export const lookOf = (name: string): Look => LOOKS[name as LookName] ?? {};

export const FAMILY = '"STIX Two Text", Palatino, Georgia, serif';

/** Value of a custom property of the page, '--ink'; '' or undefined where it has none. */
export type Token = (name: string) => string | undefined;

export const colorOf = (color: Color, token: Token): string => token(`--${color}`) || LIGHT[color];

const named = (color: Color): string => `var(--${color}, ${LIGHT[color]})`;

function rule(name: string, look: Look): string {
  const { fill, stroke, width, dash, size, italic, bold, halo } = look;
  const parts = [
    `fill: ${fill ? named(fill) : 'none'}`,
    ...(stroke ? [`stroke: ${named(stroke)}`, `stroke-width: calc(${width ?? 1}px * var(--line, 1))`] : []),
    ...(dash ? [`stroke-dasharray: ${dash.join(' ')}`] : []),
    ...(size ? [`font-size: ${size}px`] : []),
    ...(italic ? ['font-style: italic'] : []),
    ...(bold ? ['font-weight: 700'] : []),
    ...(halo ? [`stroke: var(--halo, ${named('paper')})`, `stroke-width: ${halo}px`, 'paint-order: stroke'] : []),
  ];
  return `.${name} { ${parts.join('; ')}; stroke-linejoin: round; }`;
}

/** The rules of the page's style sheet. */
export const plotsCss = Object.entries<Look>(LOOKS)
  .map(([name, look]) => rule(name, look))
  .join('\n');
