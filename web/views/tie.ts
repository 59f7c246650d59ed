const NS = 'http://www.w3.org/2000/svg';

/** Draws the ink line from the part that was pressed to the inputs that opened for it, where both stand side by side. */
export function tieFor(root: ShadowRoot, place: string | undefined): void {
  const old = root.querySelector('.tie');
  const section = root.querySelector('tb-section');
  const inputs = root.querySelector('tb-part');
  const main = root.querySelector('main');
  const part =
    place === undefined ? undefined : section?.shadowRoot?.querySelector(`[data-place="${CSS.escape(place)}"]`);
  if (!part || !inputs || !main) {
    old?.remove();
    return;
  }
  const [from, to, page] = [part, inputs, main].map((each) => each.getBoundingClientRect()) as [
    DOMRect,
    DOMRect,
    DOMRect,
  ];
  if (to.left < from.right) {
    old?.remove();
    return;
  }
  const x = from.left + from.width / 2 - page.left;
  const y = from.top + Math.min(from.height / 2, 12) - page.top;
  const [endX, endY] = [to.left - page.left - 8, to.top - page.top + 14];
  const bend = endX - 16;
  const svg = old ?? main.appendChild(document.createElementNS(NS, 'svg'));
  svg.setAttribute('class', 'tie');
  svg.setAttribute('aria-hidden', 'true');
  svg.innerHTML = `<path d="M${x} ${y}L${bend} ${y}L${bend} ${endY}L${endX} ${endY}" /><circle cx="${x}" cy="${y}" r="2.4" />`;
}
