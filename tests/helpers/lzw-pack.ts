/** How a TIFF LZW stream is made: writers differ in when they clear the table and whether they close the stream. */
export interface LzwStyle {
  /** Table entries at which the clear code is written; 4094 is common, 4096 fills the table, Infinity never clears. */
  readonly clearAt?: number;
  readonly endCode?: boolean;
}

/** Packs bytes as TIFF LZW (TIFF 6.0 section 13), straight from the text, with strings as table keys. */
export function packLzw(bytes: Uint8Array, { clearAt = 4094, endCode = true }: LzwStyle = {}): Uint8Array {
  const out: number[] = [];
  let pending = 0;
  let pendingBits = 0;
  let width = 9;
  let table = new Map<string, number>();
  let next = 258;
  const write = (code: number): void => {
    pending = pending * 2 ** width + code;
    pendingBits += width;
    while (pendingBits >= 8) {
      const rest = 2 ** (pendingBits - 8);
      out.push(Math.floor(pending / rest));
      pending %= rest;
      pendingBits -= 8;
    }
  };
  const codeOf = (run: string): number => (run.length === 1 ? run.charCodeAt(0) : table.get(run)!);
  write(256);
  let run = '';
  for (const byte of bytes) {
    const longer = run + String.fromCharCode(byte);
    if (longer.length === 1 || table.has(longer)) {
      run = longer;
      continue;
    }
    write(codeOf(run));
    if (next < 4096) table.set(longer, next++);
    // The writer is one entry ahead of the reader, which grows its codes one early.
    if (next > 2 ** width - 1 && width < 12) width++;
    if (next >= clearAt) {
      write(256);
      table = new Map();
      next = 258;
      width = 9;
    }
    run = String.fromCharCode(byte);
  }
  if (run) {
    write(codeOf(run));
    next++;
    if (next > 2 ** width - 1 && width < 12) width++;
  }
  if (endCode) write(257);
  if (pendingBits > 0) out.push((pending * 2 ** (8 - pendingBits)) & 255);
  return Uint8Array.from(out);
}
