/** Rows as wide as the files of sites are written. */
const WIDTH = 110;

/** A scenario file as people write it: what fits stands on one line, the rest key by key. */
export function fileText(value: unknown): string {
  return `${laidOut(value, '')}\n`;
}

function laidOut(value: unknown, indent: string): string {
  const line = oneLine(value);
  if (typeof value !== 'object' || value === null || (indent !== '' && line.length + indent.length <= WIDTH))
    return line;
  const deeper = `${indent}  `;
  const list = Array.isArray(value);
  const rows = list
    ? value.map((each) => `${deeper}${laidOut(each, deeper)}`)
    : Object.entries(value).map(([key, each]) => `${deeper}${JSON.stringify(key)}: ${laidOut(each, deeper)}`);
  const [open, close] = list ? '[]' : '{}';
  return `${open}\n${rows.join(',\n')}\n${indent}${close}`;
}

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const pairs = Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}: ${oneLine(each)}`);
  return pairs.length === 0 ? '{}' : `{ ${pairs.join(', ')} }`;
}
