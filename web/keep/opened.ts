/** What a file that somebody opens is, before it is read as a site. */
import { parseJson } from '../../sim/scenario/json.ts';

export type Opened =
  | { readonly kind: 'site'; readonly text: string }
  | { readonly kind: 'other'; readonly why: string };

/** No site's file is longer, bytes. */
const LONGEST = 2_000_000;

/** A site has at least one of these. */
const PARTS = ['pond', 'sketch', 'pump', 'vault', 'plumbing', 'watercourse'];

/** How the files of some other programs begin. */
const BEGINNINGS: readonly (readonly [RegExp, string])[] = [
  [/^%PDF/, 'a PDF document'],
  [/^PK\W/, 'a packed folder or an office document'],
  [/^(\u0089PNG|\ufffdPNG|GIF8|\ufffd\ufffd\ufffd)/, 'a picture'],
  [/^\s*<(!doctype|html)/i, 'a web page'],
  [/^\s*</, 'an XML file'],
];

const other = (name: string, what: string): Opened => ({ kind: 'other', why: `‘${name}’ ${what}` });
const WANTED = 'The files of this page end in ‘.json’ and are made by ‘save the file’.';

/** Whether a file is a site's, sound or with problems; else what it is, in a sentence, and what to do. */
export function openedFile(name: string, text: string): Opened {
  if (text.trim() === '') return other(name, 'is empty.');
  if (text.length > LONGEST) return other(name, `is longer than any site’s file. ${WANTED}`);
  const known = BEGINNINGS.find(([begins]) => begins.test(text));
  if (known) return other(name, `is ${known[1]}, no site’s file. ${WANTED}`);
  if (text.includes('\u0000') || text.includes('\ufffd')) return other(name, `is a file of another program. ${WANTED}`);
  const json = parseJson(text);
  if (!json.ok) {
    if (!/^\s*\{/.test(text)) return other(name, `is a file of another program. ${WANTED}`);
    const at = `line ${json.line}:${json.column}: found ${json.found}; wanted ${json.wanted}`;
    if (!endsWhole(text)) return other(name, `is cut short: its end is missing (${at}). Fetch or copy it once more.`);
    return other(name, `cannot be read (${at}). It may have been changed by hand.`);
  }
  const { value } = json;
  const isSite = typeof value === 'object' && value !== null && PARTS.some((part) => part in value);
  return isSite
    ? { kind: 'site', text }
    : other(name, `has no pond and no pump in it: it is another program’s. ${WANTED}`);
}

/** Whether as many brackets are closed as are opened. */
function endsWhole(text: string): boolean {
  const bare = text.replace(/"(?:[^"\\]|\\.)*"/g, '');
  const count = (each: RegExp): number => bare.match(each)?.length ?? 0;
  return count(/[{[]/g) <= count(/[}\]]/g);
}
