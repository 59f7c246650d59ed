import { byClip, type Clip, type Mark } from './marks.ts';
import { sectionCss } from './styles.ts';

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => escapes[sign]);

/** Value of a custom property of the page, '--ink'; undefined where it has none. */
export type Token = (name: string) => string | undefined;

/** A color or a number; names of the system's own colors mean nothing in a file. */
const isPlain = (value: string | undefined): boolean => /^[#\d.]/.test(value ?? '');

/** The styles with their colors and widths written in: programs that draw SVG know nothing of custom properties. */
function plainCss(token: Token): string {
  const plain = (name: string, light: string): string => (isPlain(token(name)) ? token(name)! : light);
  const filled = `${sectionCss}.paper { fill: var(--paper, #f5f0e5); }`.replace(
    /var\((--[\w-]+), ([^()]+)\)/g,
    (_, name, light) => plain(name, light),
  );
  return filled.replace(/calc\(([\d.]+)px \* ([\d.]+)\)/g, (_, width, by) => `${Number(width) * Number(by)}`);
}

/** What a file says besides its marks. */
export interface FileWords {
  readonly title: string;
  /** What the drawing shows, in a sentence or two. */
  readonly description: string;
}

/** A drawing as the text of an SVG file that needs nothing else. */
export function svgText(
  size: { readonly width: number; readonly height: number; readonly hatched: boolean },
  { title, description }: FileWords,
  clips: readonly Clip[],
  marks: readonly Mark[],
  token: Token = () => undefined,
): string {
  const [width, height] = [Math.ceil(size.width), Math.ceil(size.height)];
  const look = size.hatched ? ' class="hatched"' : '';
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"${look} role="img" aria-labelledby="title desc">`;
  const said = `<title id="title">${escaped(title)}</title><desc id="desc">${escaped(description)}</desc>`;
  const defs = clips.map(({ id, d }) => `<clipPath id="${id}"><path d="${d}"/></clipPath>`).join('');
  const body = byClip(marks).map((group) => {
    const text = group.marks.map(markText).join('\n');
    return group.clip ? `<g clip-path="url(#${group.clip})">${text}</g>` : text;
  });
  const ground = '<path class="paper" d="M0 0H100000V100000H0Z"/>';
  return `${head}${said}<style>${plainCss(token)}</style><defs>${defs}</defs>${ground}\n${body.join('\n')}\n</svg>\n`;
}

function markText(mark: Mark): string {
  if (mark.kind === 'text') {
    return `<text class="${mark.look}" x="${mark.x.toFixed(1)}" y="${mark.y.toFixed(1)}" text-anchor="${mark.at}">${escaped(mark.text)}</text>`;
  }
  const opacity = mark.opacity === undefined ? '' : ` stroke-opacity="${mark.opacity}"`;
  const stroke = mark.stroke === undefined ? '' : ` stroke-width="${mark.stroke}"`;
  return `<path class="${mark.look}" d="${mark.d}"${opacity}${stroke}/>`;
}
