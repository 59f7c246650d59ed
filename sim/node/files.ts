import { closeSync, openSync, readSync, statSync, writeSync } from 'node:fs';
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

/**
 * Text of a file, or of standard input for '-'.
 * @param wanted what the file should be
 */
export async function readText(path: string, wanted = 'a scenario file'): Promise<string> {
  const bytes = await bytesOf(path, wanted);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const place = path === '-' ? 'standard input' : path;
    throw new FileTrouble({ place, found: 'bytes that are no text', wanted: `${wanted} in UTF-8` });
  }
}

/** Bytes read and characters written at once. */
const CHUNK = 1 << 16;
/** More than any site has; what has no end, as a device, is not read for ever. */
const MOST_BYTES = 2 ** 26;

async function bytesOf(path: string, wanted: string): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  const take = (chunk: Buffer): void => {
    chunks.push(chunk);
    length += chunk.length;
    if (length <= MOST_BYTES) return;
    const place = path === '-' ? 'standard input' : path;
    throw new FileTrouble({ place, found: `more than ${MOST_BYTES / 2 ** 20} MB`, wanted });
  };
  if (path === '-') for await (const chunk of process.stdin) take(chunk);
  else readChunks(path, take, wanted);
  return Buffer.concat(chunks);
}

function readChunks(path: string, take: (chunk: Buffer) => void, wanted: string): void {
  try {
    const file = openSync(path, 'r');
    try {
      for (;;) {
        const chunk = Buffer.allocUnsafe(CHUNK);
        const read = readSync(file, chunk);
        if (read === 0) return;
        take(chunk.subarray(0, read));
      }
    } finally {
      closeSync(file);
    }
  } catch (error) {
    if (error instanceof FileTrouble) throw error;
    throw new FileTrouble({ place: path, found: reason(error), wanted });
  }
}

/** Whether two paths lead to one file that is there. */
export function sameFile(one: string, other: string): boolean {
  const [a, b] = [one, other].map((path) => statSync(path, { throwIfNoEntry: false }));
  return a !== undefined && b !== undefined && a.isFile() && a.dev === b.dev && a.ino === b.ino;
}

/** What is wrong where standard output takes no more. */
export function outputProblem(error: unknown): Problem {
  return { place: 'standard output', found: reason(error), wanted: 'room for the answer' };
}

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
