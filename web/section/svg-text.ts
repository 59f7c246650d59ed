import type { Clip, Mark } from './marks.ts';
import { sectionCss } from './styles.ts';

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => escapes[sign]);

/** Value of a custom property of the page, '--ink'; undefined where it has none. */
export type Token = (name: string) => string | undefined;

/** The styles with their colors and widths written in: programs that draw SVG know nothing of custom properties. */
function plainCss(token: Token): string {
  const filled = sectionCss.replace(/var\((--[\w-]+), ([^()]+)\)/g, (_, name, light) => token(name) || light);
  return filled.replace(/calc\(([\d.]+)px \* ([\d.]+)\)/g, (_, width, by) => `${Number(width) * Number(by)}`);
}

/** A drawing as the text of an SVG file that needs nothing else. */
export function svgText(
  size: { readonly width: number; readonly height: number },
  title: string,
  clips: readonly Clip[],
  marks: readonly Mark[],
  token: Token = () => undefined,
): string {
  const { width, height } = size;
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.ceil(width)}" height="${Math.ceil(height)}" viewBox="0 0 ${Math.ceil(width)} ${Math.ceil(height)}" role="img">`;
  const defs = clips.map(({ id, d }) => `<clipPath id="${id}"><path d="${d}"/></clipPath>`).join('');
  const body = marks.map(markText).join('\n');
  const ground = '<path class="paper" d="M0 0H100000V100000H0Z"/>';
  const css = `${plainCss(token)}.paper { fill: ${token('--paper') || '#f5f0e5'}; }`;
  return `${head}<title>${escaped(title)}</title><style>${css}</style><defs>${defs}</defs>${ground}\n${body}\n</svg>\n`;
}

function markText(mark: Mark): string {
  if (mark.kind === 'text') {
    return `<text class="${mark.look}" x="${mark.x.toFixed(1)}" y="${mark.y.toFixed(1)}" text-anchor="${mark.at}">${escaped(mark.text)}</text>`;
  }
  const clip = mark.clip ? ` clip-path="url(#${mark.clip})"` : '';
  const opacity = mark.opacity === undefined ? '' : ` opacity="${mark.opacity}"`;
  const stroke = mark.stroke === undefined ? '' : ` stroke-width="${mark.stroke}"`;
  return `<path class="${mark.look}" d="${mark.d}"${clip}${opacity}${stroke}/>`;
}
