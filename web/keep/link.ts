/** A link that carries a whole case: '#s=', the version and the form, a check of what follows, and the case itself. */
import type { Display, Subject } from '../engine/protocol.ts';
import { LINK } from './address.ts';

/** A site, the question asked of it, and the units it is shown in where they are not the file's own. */
export interface Carried {
  readonly file: unknown;
  readonly about: Subject;
  readonly display?: Display;
}

export type Followed =
  | { readonly kind: 'case'; readonly carried: Carried }
  /** Not all of it is here, or some of it was changed on the way. */
  | { readonly kind: 'cut' }
  /** Made by a later version of this page. */
  | { readonly kind: 'newer' };

const VERSION = 1;
/** No site is longer, in bytes: a link is not to fill the memory. */
const LONGEST = 2_000_000;

const SUBJECTS: readonly unknown[] = ['stop', 'filling', 'filter'] satisfies Subject[];
const DISPLAYS: readonly unknown[] = ['metric', 'us'] satisfies Display[];

/** FNV-1a of 32 bits (Fowler, Noll and Vo), written to base 36. */
function checkOf(text: string): string {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return (sum >>> 0).toString(36);
}

/** Base 64 for addresses, without padding (RFC 4648, section 5). */
function toText(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Throws an error where the text is none. */
function toBytes(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (each) => each.charCodeAt(0));
}

/** Throws an error where the bytes cannot be passed through, or are too many. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  way: CompressionStream | DecompressionStream,
): Promise<Uint8Array> {
  const reader = new Blob([bytes]).stream().pipeThrough(way).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    parts.push(next.value);
    size += next.value.length;
    if (size > LONGEST) {
      await reader.cancel();
      throw new Error('too long');
    }
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** The stream by which the bytes of a link are deflated (RFC 1951); null where the browser has none. */
function deflating(): CompressionStream | null {
  try {
    return new CompressionStream('deflate-raw');
  } catch {
    return null;
  }
}

/** The address's part from '#' on that carries a case. */
export async function linkOf(carried: Carried, way: CompressionStream | null = deflating()): Promise<string> {
  const { file, about, display } = carried;
  const bytes = new TextEncoder().encode(JSON.stringify({ file, about, ...(display && { display }) }));
  const body = toText(way ? await through(bytes, way) : bytes);
  return `${LINK}${VERSION}.${way ? 'd' : 'u'}.${checkOf(body)}.${body}`;
}

/** What an address carries. Never throws. */
export async function follow(hash: string): Promise<Followed> {
  const [version, form, check, body, ...more] = hash.slice(LINK.length).split('.');
  if (/^\d+$/.test(version) && Number(version) > VERSION) return { kind: 'newer' };
  const whole = Number(version) === VERSION && body !== undefined && more.length === 0 && check === checkOf(body);
  if (!whole || (form !== 'd' && form !== 'u')) return { kind: 'cut' };
  try {
    const bytes = form === 'd' ? await through(toBytes(body), new DecompressionStream('deflate-raw')) : toBytes(body);
    const { file, about, display } = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    if (typeof file !== 'object' || file === null) return { kind: 'cut' };
    const shown = DISPLAYS.includes(display) ? { display } : {};
    return { kind: 'case', carried: { file, about: SUBJECTS.includes(about) ? about : 'stop', ...shown } };
  } catch {
    return { kind: 'cut' };
  }
}
