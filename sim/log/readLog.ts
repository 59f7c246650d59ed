import { parseQuantity } from '../quantity/index.ts';
import { type Head, headOf } from './head.ts';
import { NOTE_WANTED, type Note, noteIn } from './notes.ts';
import { inOrder } from './order.ts';
import type { Log, LogLine, LogProblem, Measured } from './reading.ts';
import { lineTime, timeOfDay } from './times.ts';

/** More lines than anybody writes down; what a data logger has more than that tells nothing more. */
const MOST_LINES = 2000;
const LINE_WANTED = 'a time and a level with a comma between them, as 2031-06-02 07:30, 120 mm';
const UNIT_WANTED = 'a level with its unit, as 120 mm or 4 3/4 in (a bare number takes the unit of the line before)';

/** How texts begin that are no logs. */
const FOREIGN: readonly (readonly [RegExp, string])[] = [
  [/^\s*[{[]/, 'a site’s file or other JSON'],
  [/^%PDF/, 'a PDF document'],
  [/^PK\W/, 'an office document or a packed folder'],
  [/^\s*</, 'a web page or an XML file'],
];

interface Taken extends LogLine {
  readonly kind: 'date' | 'since';
  readonly noon: boolean;
}

/** Reads a log line by line, each in the light of those before it. */
class Reader {
  readonly problems: LogProblem[] = [];
  readonly taken: Taken[] = [];
  evaporation: Log['evaporation'];
  head: Head | undefined;
  private unit: string | undefined;
  private begun = false;

  line(text: string, line: number): undefined {
    const plain = text.trim();
    if (plain === '' || plain.startsWith('#')) return;
    const evaporation = /^evaporation\b[\s:=,;]*(.*)$/i.exec(plain);
    if (evaporation) return this.evaporates(evaporation[1], line);
    const fields = fieldsOf(plain);
    if (!this.begun) {
      this.begun = true;
      this.head = headOf(fields);
      this.unit = this.head?.unit;
      if (this.head) return;
    }
    this.reading(fields, line);
  }

  private tell(line: number, left: LogProblem['left'], found: string, wanted: string): undefined {
    this.problems.push({ place: `line ${line}`, line, left, found, wanted });
  }

  private evaporates(text: string, line: number): undefined {
    const unit = /[^\d\s.]\S*(?:\s*\/\s*\S+)?$/.exec(text.replace(/\b(to|or|and)\b/g, '-'))?.[0] ?? '';
    const ends = text.split(/\s*(?:\bto\b|\.\.|–)\s*/);
    const values = ends.map((each) => parseQuantity(/[a-z]/i.test(each) ? each : `${each} ${unit}`, 'depthRate'));
    const [low, high = low] = values.map((each) => (each.ok && each.value >= 0 ? each.value : undefined));
    if (ends.length <= 2 && low !== undefined && high !== undefined && low <= high) this.evaporation = [low, high];
    else this.tell(line, 'line', JSON.stringify(text), 'evaporation as ‘evaporation 3 to 5 mm/d’');
  }

  private reading(fields: readonly string[], line: number): undefined {
    const [first = '', ...rest] = joined(fields);
    if (rest.length === 0) return this.tell(line, 'line', JSON.stringify(first.trim()), LINE_WANTED);
    const time = lineTime(first, this.head?.time);
    if (!time.ok) return this.tell(line, 'line', time.found, time.wanted);
    const [field = '', ...others] = rest;
    const note = this.notes(others, line);
    const level = this.level(field);
    if (typeof level === 'object') {
      // A line without a level still tells of the pump and of water.
      const own = noteIn(field);
      if (own === undefined || 'found' in own) return this.tell(line, 'line', level.found, level.wanted);
      Object.assign(note, own);
    }
    const value = typeof level === 'number' ? level : undefined;
    this.taken.push({ line, t: time.t, kind: time.kind, noon: time.noon === true, level: value, ...note });
  }

  /** undefined: none was given. */
  private level(field: string): number | undefined | { found: string; wanted: string } {
    const plain = field.trim();
    if (plain === '' || plain === '-' || plain === '–') return undefined;
    const bare = /^[-−+]?\s*(?:\d+(?:\.\d*)?|\.\d+|\d+[ -]+\d+\/\d+|\d+\/\d+)$/.test(plain);
    if (bare && this.unit === undefined)
      return { found: `${JSON.stringify(plain)} without a unit`, wanted: UNIT_WANTED };
    const parsed = parseQuantity(bare ? `${plain} ${this.unit}` : plain, 'length');
    if (!parsed.ok) return { found: parsed.found, wanted: UNIT_WANTED };
    this.unit = parsed.units.at(-1);
    return parsed.value;
  }

  private notes(fields: readonly string[], line: number): Note {
    const all: Note = {};
    for (const field of fields) {
      if (field.trim() === '') continue;
      const note = noteIn(field);
      if (note === undefined) {
        // A pump's word mistyped is no remark.
        if (/^[a-z]{1,4}$/i.test(field.trim())) this.tell(line, 'part', JSON.stringify(field.trim()), NOTE_WANTED);
        continue;
      }
      if ('found' in note) this.tell(line, 'part', note.found, NOTE_WANTED);
      else Object.assign(all, note);
    }
    return all;
  }
}

/** The fields of a line, by its tabs, else its semicolons, else its commas; quotes round a field are taken off. */
function fieldsOf(line: string): string[] {
  const by = line.includes('\t') ? '\t' : line.includes(';') ? ';' : ',';
  return line.split(by).map((field) => field.trim().replace(/^"(.*)"$/, '$1'));
}

/** A date and its time of day in columns of their own are one. */
function joined([date = '', clock = '', ...rest]: readonly string[]): string[] {
  const apart = /^\d{4}-\d{1,2}-\d{1,2}$/.test(date.trim()) && timeOfDay(clock) !== undefined;
  return apart
    ? [`${date.trim()} ${clock.trim()}`, ...rest]
    : [date, ...(clock === '' && rest.length === 0 ? [] : [clock, ...rest])];
}

/**
 * Reads a log of levels: a line each with its time, its level, and what else was noted. What can't be read is told by
 * its line with what is wanted instead; the other lines stay.
 * @param measured how the level was measured, where the person says; else the head of the log tells, else 'down'
 */
export function readLog(text: string, measured?: Measured): Log {
  const plain = text.replace(/^\ufeff/, '');
  const foreign = FOREIGN.find(([begins]) => begins.test(plain));
  if (foreign) return refused(`${foreign[1]}, no log`, measured);
  if (plain.includes('\u0000') || plain.includes('\ufffd'))
    return refused('a file of another program, no log', measured);
  const lines = plain.split(/\r\n|\r|\n/);
  if (lines.every((line) => line.trim() === '')) return refused('nothing', measured);
  if (lines.length > MOST_LINES)
    return refused(`${lines.length} lines`, measured, `at most ${MOST_LINES}: one an hour is plenty`);
  const reader = new Reader();
  for (const [i, line] of lines.entries()) reader.line(line, i + 1);
  return ordered(reader, measured ?? reader.head?.measured ?? 'down');
}

function refused(found: string, measured: Measured | undefined, wanted = LINE_WANTED): Log {
  const problem: LogProblem = { place: 'the log', line: 0, left: 'all', found, wanted };
  const none = { dated: false, noons: false, lines: [], evaporation: undefined };
  return { ...none, measured: measured ?? 'down', problems: [problem] };
}

const KINDS = { date: 'a date', since: 'a time since the start' } as const;

/** The lines of one kind of time, in its order, no moment with two levels. */
function ordered({ taken, problems, evaporation }: Reader, measured: Measured): Log {
  const tell = ({ line }: LogLine, found: string, wanted: string): void =>
    void problems.push({ place: `line ${line}`, line, left: 'line', found, wanted });
  const kind = taken[0]?.kind ?? 'date';
  const alike = taken.filter((each) => {
    if (each.kind === kind) return true;
    tell(each, `${KINDS[each.kind]} where the first line has ${KINDS[kind]}`, `${KINDS[kind]}, as there`);
    return false;
  });
  const kept = inOrder(alike);
  const lines: Taken[] = [];
  alike.forEach((each, i) => {
    const before = lines.at(-1);
    if (!kept.has(i))
      tell(
        each,
        'a time earlier than the line before, or later than the lines after',
        'times that go forward: look at its date',
      );
    else if (before?.t === each.t && before.level !== undefined && each.level !== undefined)
      tell(each, `the same time as line ${before.line}`, 'each reading with a time of its own: add the time of day');
    else lines.push(each);
  });
  return {
    dated: kind === 'date',
    noons: lines.some(({ noon }) => noon) && lines.some(({ noon }) => !noon),
    measured,
    lines: lines.map(({ kind: _kind, noon: _noon, ...line }) => line),
    evaporation,
    problems: problems.sort((a, b) => a.line - b.line),
  };
}
