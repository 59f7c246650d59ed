/** Sizes a sheet is tried in, the largest first: letters in pt, the drawing as a part of its full width. */
const SIZES: readonly (readonly [letters: number, drawing: number])[] = [
  [10.5, 1],
  [10, 1],
  [9.5, 1],
  [9, 1],
  [8.5, 1],
  [8, 1],
  [7.5, 1],
  [7.5, 0.85],
  [7, 0.85],
  [7, 0.7],
  [6.5, 0.7],
  [6.5, 0.55],
  [6, 0.5],
];

/** Sets an article so that its columns hold all its words; false where even the smallest size does not. */
export function fitOnPage(article: HTMLElement): boolean {
  article.classList.remove('long');
  const words = article.querySelector('.words');
  if (!words) return true;
  for (const [letters, drawing] of SIZES) {
    article.style.setProperty('--letters', `${letters}pt`);
    article.style.setProperty('--drawing', String(drawing));
    if (words.scrollWidth <= words.clientWidth + 1 && words.scrollHeight <= words.clientHeight + 1) return true;
  }
  article.classList.add('long');
  return false;
}
