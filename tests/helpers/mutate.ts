import type { Random } from '../../src/units/index.ts';

const pieces = [
  '<',
  '>',
  '&',
  '"',
  "'",
  ',',
  ';',
  '\n',
  '{',
  '}',
  '[',
  ']',
  '1e999',
  '-',
  '__proto__',
  'constructor',
  '\u202E',
  '<!DOCTYPE x [<!ENTITY a "b">]>',
  '&a;',
  'null',
  '9'.repeat(400),
  '\u0000',
  ']]>',
  '\uD800',
];

/** A changed copy of a file: one to four bytes flipped, ranges cut, doubled or moved, or troublesome pieces put in. */
export function mutated(file: Uint8Array, random: Random): Uint8Array<ArrayBuffer> {
  let bytes = Uint8Array.from(file);
  const at = (): number => Math.floor(random.next() * (bytes.length + 1));
  for (let n = 1 + Math.floor(random.next() * 4); n > 0; n--) {
    const [from, to] = [at(), at()].sort((a, b) => a - b) as [number, number];
    const kind = Math.floor(random.next() * 11);
    if (kind <= 1 && bytes.length > 0) bytes[Math.min(from, bytes.length - 1)]! ^= 1 << Math.floor(random.next() * 8);
    else if (kind >= 7) changeLetter(bytes, random);
    else if (kind === 2) bytes = joined(bytes.subarray(0, from), bytes.subarray(Math.min(to, from + 40)));
    else if (kind === 3) bytes = bytes.slice(0, from);
    else if (kind === 4) bytes = joined(bytes.subarray(0, to), bytes.subarray(from));
    else if (kind === 5)
      bytes = joined(
        bytes.subarray(0, from),
        new TextEncoder().encode(pieces[Math.floor(random.next() * pieces.length)]),
        bytes.subarray(from),
      );
    else bytes = joined(bytes.subarray(0, from), bytes.subarray(to), bytes.subarray(from, to));
  }
  return bytes;
}

/** Another letter or digit in the place of one: what a slip of the finger or a hostile hand would change. */
function changeLetter(bytes: Uint8Array, random: Random): void {
  const isLetter = (byte: number): boolean => (byte >= 48 && byte <= 57) || (byte >= 97 && byte <= 122);
  for (let tries = 0; tries < 20; tries++) {
    const at = Math.floor(random.next() * bytes.length);
    if (!isLetter(bytes[at] ?? 0)) continue;
    bytes[at] = bytes[at]! < 58 ? 48 + Math.floor(random.next() * 10) : 97 + Math.floor(random.next() * 26);
    return;
  }
}

function joined(...parts: Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
