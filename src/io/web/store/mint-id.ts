const LETTERS = 'abcdefghijklmnopqrstuvwxyz0123456789';

/** A random id of 20 letters and digits, 103 bits: two devices never make the same. */
export function mintId(): string {
  let id = '';
  while (id.length < 20) {
    for (const byte of crypto.getRandomValues(new Uint8Array(32))) {
      // Bytes over the last whole multiple of 36 would favour some letters.
      if (byte < 252 && id.length < 20) id += LETTERS[byte % 36];
    }
  }
  return id;
}
