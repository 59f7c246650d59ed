/** Width of the command's text, columns. */
export const WIDTH = 100;

/** Text of a file as it may go to a terminal, which would obey its control characters. */
export const printable = (text: string): string => text.replace(/\p{Cc}+/gu, ' ');

/** Characters as a terminal counts them, near enough: accents and signs of two code units count one. */
const length = (text: string): number => [...text].length;

/**
 * Words set behind a lead, every further line indented.
 *
 * @param lead what the first line begins with, its spaces included
 * @param indent columns by which further lines are moved in
 */
export function hang(lead: string, text: string, indent: number, width = WIDTH): string {
  const lines = [lead];
  let bare = true;
  for (const word of printable(text).split(' ')) {
    const line = lines[lines.length - 1];
    const longer = bare ? line + word : `${line} ${word}`;
    if (bare || length(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(' '.repeat(indent) + word);
    bare = false;
  }
  return lines.join('\n');
}

/** Parts joined by ' · ', a line broken only between parts. */
export function hangParts(lead: string, parts: readonly string[], indent: number): string {
  const HARD = '\u00A0';
  const text = parts.map((part) => part.replaceAll(' ', HARD)).join(`${HARD}· `);
  return hang(lead, text, indent).replaceAll(HARD, ' ');
}

/** Rows of cells in columns, the first set left, the others right, two spaces between. */
export function columns(table: readonly (readonly string[])[], indent = 2): string {
  const rows = table.map((row) => row.map(printable));
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => length(row[i] ?? ''))));
  const pad = (cell: string, i: number): string => {
    const space = ' '.repeat(widths[i] - length(cell));
    return i === 0 ? cell + space : space + cell;
  };
  return rows.map((row) => (' '.repeat(indent) + row.map(pad).join('  ')).trimEnd()).join('\n');
}
