const NS = 'http://www.w3.org/2000/svg';

/** How close a line may come to words, px, and how far apart the heights are that are tried. */
const CLEAR = 4;
const STEP = 4;

/** How many words a line to the right from the middle of a part crosses at a height. */
function crossing(part: DOMRect, end: number, words: readonly DOMRect[]): (y: number) => number {
  const from = part.left + part.width / 2;
  const ahead = words.filter(({ left, right }) => right > from && left < end);
  return (y) => ahead.filter(({ top, bottom }) => y > top - CLEAR && y < bottom + CLEAR).length;
}

/** The height within a part at which the fewest words are crossed; of those the nearest to its top. */
function freest(part: DOMRect, crossed: (y: number) => number): number {
  let [best, fewest] = [part.top + part.height / 2, Number.POSITIVE_INFINITY];
  for (let y = part.top + STEP; y < part.bottom - 1; y += STEP) {
    const count = crossed(y);
    if (count < fewest) [best, fewest] = [y, count];
  }
  return best;
}

/** Draws the ink line from the part that was pressed to the inputs that opened for it, where both stand side by side. */
export function tieFor(root: ShadowRoot, place: string | undefined): void {
  const old = root.querySelector<SVGElement>('.tie');
  const drawing = root.querySelector('tb-section')?.shadowRoot;
  const inputs = root.querySelector('tb-part');
  const main = root.querySelector('main');
  const part = place === undefined ? undefined : drawing?.querySelector(`[data-place="${CSS.escape(place)}"]`);
  const [from, to] = [part?.getBoundingClientRect(), inputs?.getBoundingClientRect()];
  if (!from || !to || !drawing || !main || to.left < from.right) {
    old?.remove();
    return;
  }
  const page = main.getBoundingClientRect();
  const at = { x: from.left + from.width / 2 - page.left, end: to.left - page.left - 8, endY: to.top - page.top + 14 };
  const svg = old ?? main.appendChild(document.createElementNS(NS, 'svg'));
  const words = [...drawing.querySelectorAll('text')].map((word) => word.getBoundingClientRect());
  const crossed = crossing(from, to.left, words);
  // Words move while the water does: a line keeps its height until one comes in its way.
  let y = svg.dataset['of'] === place ? Number(svg.dataset['y']) : Number.NaN;
  const within = y + page.top > from.top && y + page.top < from.bottom;
  if (!within || crossed(y + page.top) > 0) y = freest(from, crossed) - page.top;
  svg.dataset['of'] = place;
  svg.dataset['y'] = `${y}`;
  const bend = at.end - 16;
  svg.setAttribute('class', 'tie');
  svg.setAttribute('aria-hidden', 'true');
  svg.innerHTML = `<path d="M${at.x} ${y}L${bend} ${y}L${bend} ${at.endY}L${at.end} ${at.endY}" /><circle cx="${at.x}" cy="${y}" r="2.4" />`;
}
