/** Files to be kept: their names, and handing them to the browser. */

/** A file's name from words: 'Courtyard spring' is 'courtyard-spring'. */
export const fileName = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '') || 'site';

export function save(content: Blob | string, type: string, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  // Some browsers read the file only after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
