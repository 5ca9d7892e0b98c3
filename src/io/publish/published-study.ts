import type { Study } from '../../study/index.ts';
import { UserError } from '../../units/index.ts';
import { unpackJson } from '../offline/index.ts';

/** A published study from a file's bytes: gzip, or what a host that unpacks such files sends. Throws `UserError` for anything else. */
export async function readPublishedStudy(bytes: ArrayBuffer): Promise<Study> {
  const [first, second] = new Uint8Array(bytes, 0, Math.min(2, bytes.byteLength));
  const packed = first === 0x1f && second === 0x8b;
  try {
    const read = packed ? await unpackJson(bytes) : JSON.parse(new TextDecoder().decode(bytes));
    if (typeof (read as Partial<Study>)?.sentence === 'string') return read as Study;
  } catch {
    // Told below with everything else that is no study.
  }
  throw new UserError('study', 'The published study of this site cannot be read; publish the book again.');
}
