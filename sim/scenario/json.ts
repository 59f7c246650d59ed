/**
 * Strict JSON (RFC 8259) to a value, with the line and column of what is wrong.
 *
 * The engines' own parser words its errors differently from one engine to the next, gives no column in some, and
 * keeps the last of two equal keys without a word. A key given twice is an error here: one of the two would be lost.
 */

export type JsonReading =
  | { readonly ok: true; readonly value: unknown }
  | {
      readonly ok: false;
      readonly line: number;
      readonly column: number;
      readonly found: string;
      readonly wanted: string;
    };

/** Deeper nesting than any site has, and far less than would exhaust the stack. */
const DEEPEST = 64;

class Fault {
  readonly at: number;
  readonly found: string;
  readonly wanted: string;
  constructor(at: number, found: string, wanted: string) {
    this.at = at;
    this.found = found;
    this.wanted = wanted;
  }
}

const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
};
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
/** What of a text in quotes needs no second look. */
const PLAIN = /[^"\\\p{Cc}]+/uy;
/** What stands unquoted where a value should: up to the next mark. */
const LOOSE = /[^\s,:[\]{}"]+/y;
const WORDS: Readonly<Record<string, unknown>> = { true: true, false: false, null: null };

/** Reads a whole text; a byte order mark before it is passed over. */
export function parseJson(text: string): JsonReading {
  try {
    return { ok: true, value: new Reader(text).whole() };
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return { ok: false, ...lineAndColumn(text, fault.at), found: fault.found, wanted: fault.wanted };
  }
}

function lineAndColumn(text: string, at: number): { line: number; column: number } {
  let line = 1;
  let start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  for (let i = start; i < at; i += 1) {
    const mark = text[i];
    if (mark !== '\n' && mark !== '\r') continue;
    if (mark === '\r' && text[i + 1] === '\n') i += 1;
    line += 1;
    start = i + 1;
  }
  return { line, column: at - start + 1 };
}

class Reader {
  private readonly text: string;
  private at = 0;

  constructor(text: string) {
    this.text = text;
    if (text.charCodeAt(0) === 0xfeff) this.at = 1;
  }

  whole(): unknown {
    this.skip();
    if (this.at >= this.text.length) throw this.fault('nothing', 'a site in braces { … }');
    const value = this.value(0);
    this.skip();
    if (this.at < this.text.length) throw this.fault(this.here(), 'the end of the file: one value only');
    return value;
  }

  private value(depth: number): unknown {
    if (depth > DEEPEST) throw this.fault('brackets within brackets', `at most ${DEEPEST} levels of them`);
    const mark = this.text[this.at];
    if (mark === '{') return this.object(depth);
    if (mark === '[') return this.list(depth);
    if (mark === '"') return this.string();
    return this.bare();
  }

  private object(depth: number): unknown {
    const entries = new Map<string, unknown>();
    this.items('}', 'a key in double quotes', () => {
      const start = this.at;
      if (this.text[this.at] !== '"') throw this.fault(this.here(), 'a key in double quotes');
      const key = this.string();
      if (entries.has(key)) throw new Fault(start, `the key ${JSON.stringify(key)} a second time`, 'each key once');
      this.skip();
      if (this.text[this.at] !== ':') throw this.fault(this.here(), `a colon after the key ${JSON.stringify(key)}`);
      this.at += 1;
      this.skip();
      entries.set(key, this.value(depth + 1));
    });
    return Object.fromEntries(entries);
  }

  private list(depth: number): unknown[] {
    const values: unknown[] = [];
    this.items(']', 'a value', () => values.push(this.value(depth + 1)));
    return values;
  }

  /** What stands between an opening mark and `close`, separated by commas. */
  private items(close: string, what: string, item: () => void): void {
    this.at += 1;
    this.skip();
    if (this.text[this.at] === close) {
      this.at += 1;
      return;
    }
    for (;;) {
      item();
      this.skip();
      const mark = this.text[this.at];
      if (mark !== ',' && mark !== close) throw this.fault(this.here(), `a comma or ${close}`);
      this.at += 1;
      if (mark === close) return;
      this.skip();
      if (this.text[this.at] === close)
        throw this.fault(`${close} after a comma`, `${what}, or no comma before ${close}`);
    }
  }

  private string(): string {
    const start = this.at;
    let value = '';
    for (this.at += 1; ; this.at += 1) {
      PLAIN.lastIndex = this.at;
      const plain = PLAIN.exec(this.text)?.[0] ?? '';
      value += plain;
      this.at += plain.length;
      const mark = this.text[this.at];
      if (mark === undefined || mark === '\n' || mark === '\r') {
        throw new Fault(start, 'a text without its closing quote', 'a double quote at its end, on the same line');
      }
      if (mark === '"') break;
      if (mark < ' ') throw this.fault('a control character', 'it written as \\t or \\u00…');
      value += mark === '\\' ? this.escape() : mark;
    }
    this.at += 1;
    return value;
  }

  private escape(): string {
    this.at += 1;
    const mark = this.text[this.at] ?? '';
    if (mark === 'u') {
      const code = this.text.slice(this.at + 1, this.at + 5);
      if (!/^[0-9a-fA-F]{4}$/.test(code)) throw this.fault(`\\u${code}`, '\\u and four hexadecimal figures');
      this.at += 4;
      return String.fromCharCode(Number.parseInt(code, 16));
    }
    if (!Object.hasOwn(ESCAPES, mark)) throw this.fault(`\\${mark}`, 'one of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u');
    return ESCAPES[mark] ?? '';
  }

  /** A number or one of the three words; anything else unquoted is named whole. */
  private bare(): unknown {
    LOOSE.lastIndex = this.at;
    const word = LOOSE.exec(this.text)?.[0] ?? '';
    if (Object.hasOwn(WORDS, word)) {
      this.at += word.length;
      return WORDS[word];
    }
    NUMBER.lastIndex = this.at;
    const number = NUMBER.exec(this.text)?.[0];
    if (word !== '' && number === word) {
      this.at += word.length;
      return Number(word);
    }
    throw this.fault(this.here(), 'a value: a number, a text in double quotes, true, false, [ or {');
  }

  private skip(): void {
    while (' \t\n\r'.includes(this.text[this.at] ?? 'x')) this.at += 1;
  }

  private here(): string {
    if (this.at >= this.text.length) return 'the end of the file';
    if (this.text.startsWith('//', this.at) || this.text.startsWith('/*', this.at)) return 'a comment';
    LOOSE.lastIndex = this.at;
    const word = LOOSE.exec(this.text)?.[0] ?? this.text[this.at] ?? '';
    return word.length > 30 ? `${word.slice(0, 29)}…` : word;
  }

  private fault(found: string, wanted: string): Fault {
    return new Fault(this.at, found, wanted);
  }
}
