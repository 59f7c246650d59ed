/**
 * Paints the drawings of the page's own SVG files. The browser would draw such a file only as an image, which sees no font
 * of the page and which the page's policy keeps out.
 */
import { FAMILY } from '../plots/looks.ts';

/** How an element looks: the style sheet's rules over its own attributes. */
type Styles = (element: Element) => (property: string) => string;

const STYLE = /<style>([^<]*)<\/style>/;

/** The rules of a style sheet, later ones over earlier ones. */
function stylesOf(css: string): Styles {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  const rules = [...sheet.cssRules].filter((rule) => rule instanceof CSSStyleRule).reverse();
  const byClass = new Map<string, CSSStyleDeclaration[]>();
  return (element) => {
    const key = `${element.tagName} ${element.getAttribute('class')}`;
    const known =
      byClass.get(key) ?? rules.filter((rule) => element.matches(rule.selectorText)).map(({ style }) => style);
    byClass.set(key, known);
    return (property) => {
      for (const style of known) {
        const value = style.getPropertyValue(property);
        if (value) return value;
      }
      return element.getAttribute(property) ?? '';
    };
  };
}

/** Paints a file on a canvas, so many dots a px; false where the browser has no brush for it. */
export function paintSvg(text: string, canvas: HTMLCanvasElement, dots: number): boolean {
  // The page's policy wants no style element even in a document that is only read.
  const file = new DOMParser().parseFromString(text.replace(STYLE, ''), 'image/svg+xml');
  const [left = 0, top = 0, width = 0, height = 0] = (file.documentElement.getAttribute('viewBox') ?? '')
    .split(' ')
    .map(Number);
  canvas.width = width * dots;
  canvas.height = height * dots;
  const brush = canvas.getContext('2d');
  if (!brush) return false;
  brush.scale(dots, dots);
  brush.translate(-left, -top);
  const styles = stylesOf(STYLE.exec(text)?.[1] ?? '');
  for (const element of file.querySelectorAll('svg > rect, svg > path, svg > text')) {
    brush.save();
    const of = styles(element);
    const clip = /url\(#(.*)\)/.exec(of('clip-path'))?.[1];
    const outline = clip === undefined ? undefined : file.getElementById(clip)?.firstElementChild?.getAttribute('d');
    if (outline) brush.clip(new Path2D(outline));
    brush.globalAlpha = Number(of('opacity') || 1);
    brush.lineWidth = Number.parseFloat(of('stroke-width') || '1');
    brush.lineCap = (of('stroke-linecap') || 'butt') as CanvasLineCap;
    brush.lineJoin = (of('stroke-linejoin') || 'miter') as CanvasLineJoin;
    brush.setLineDash((of('stroke-dasharray').match(/[\d.]+/g) ?? []).map(Number));
    brush.fillStyle = of('fill') || '#000';
    brush.strokeStyle = of('stroke') || '#000';
    const paints = { fill: of('fill') !== 'none', stroke: !['', 'none'].includes(of('stroke')) };
    if (element.tagName === 'text') paintText(brush, element, of, paints);
    else paintShape(brush, element, paints);
    brush.restore();
  }
  return true;
}

interface Paints {
  readonly fill: boolean;
  readonly stroke: boolean;
}

function paintShape(brush: CanvasRenderingContext2D, element: Element, { fill, stroke }: Paints): void {
  const figure = (name: string): number => Number(element.getAttribute(name) ?? 0);
  const d = element.getAttribute('d');
  const shape = new Path2D(d ?? '');
  if (d === null) shape.rect(figure('x'), figure('y'), figure('width'), figure('height'));
  if (fill) brush.fill(shape);
  if (stroke) brush.stroke(shape);
}

const ALIGN = { start: 'left', middle: 'center', end: 'right' } as const;

/** A text's stroke is the ground that keeps it clear of lines, and goes under it. */
function paintText(
  brush: CanvasRenderingContext2D,
  element: Element,
  of: (property: string) => string,
  { stroke }: Paints,
): void {
  const [x, y] = [Number(element.getAttribute('x')), Number(element.getAttribute('y'))];
  const text = element.textContent ?? '';
  brush.font = `${of('font-style')} ${of('font-weight')} ${Number.parseFloat(of('font-size') || '16')}px ${FAMILY}`;
  brush.textAlign = ALIGN[(element.getAttribute('text-anchor') ?? 'start') as keyof typeof ALIGN];
  if (stroke) brush.strokeText(text, x, y);
  brush.fillText(text, x, y);
}
