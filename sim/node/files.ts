import { closeSync, openSync, readFileSync, writeSync } from 'node:fs';
import { buffer } from 'node:stream/consumers';
import type { Problem } from '../scenario/scenario.ts';

/** A file that cannot be read or written: a problem of the call. */
export class FileTrouble extends Error {
  override readonly name = 'FileTrouble';
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(`${problem.place}: ${problem.found}`);
    this.problem = problem;
  }
}

/** Text of a file, or of standard input for '-'. */
export async function readText(path: string): Promise<string> {
  const bytes = await bytesOf(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const place = path === '-' ? 'standard input' : path;
    throw new FileTrouble({ place, found: 'bytes that are no text', wanted: 'a scenario file in UTF-8' });
  }
}

async function bytesOf(path: string): Promise<Buffer> {
  if (path === '-') return buffer(process.stdin);
  try {
    return readFileSync(path);
  } catch (error) {
    throw new FileTrouble({ place: path, found: reason(error), wanted: 'a scenario file' });
  }
}

/** Characters gathered before they are written. */
const CHUNK = 1 << 16;

/** Writes lines to a file, which is made or made anew. */
export function writeLines(path: string, lines: Iterable<string>): void {
  try {
    const file = openSync(path, 'w');
    try {
      let gathered = '';
      for (const line of lines) {
        gathered += line;
        if (gathered.length < CHUNK) continue;
        writeWhole(file, gathered);
        gathered = '';
      }
      writeWhole(file, gathered);
    } finally {
      closeSync(file);
    }
  } catch (error) {
    throw new FileTrouble({ place: path, found: reason(error), wanted: 'a file that can be written' });
  }
}

/** One call may write only a part, as into a pipe. */
function writeWhole(file: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EISDIR: 'a folder',
  ENOTDIR: 'a path through a file that is no folder',
  EACCES: 'a file that may not be opened',
  ENOSPC: 'a full disk',
};

function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : undefined;
  if (code === undefined) throw error;
  return REASONS[code] ?? code;
}
