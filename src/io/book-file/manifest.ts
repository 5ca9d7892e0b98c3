import * as v from 'valibot';
import { UserError } from '../../units/index.ts';
import { limits } from './limits.ts';

/** Version of the container that this program writes. */
export const FILE_VERSION = 1;

const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/));
const size = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(limits.log));
const sayings = v.pipe(v.string(), v.maxLength(200));

const schema = v.strictObject({
  format: v.literal(`brinkbook/file@${FILE_VERSION}`),
  /** 'whole' holds the log, so that it can be merged; a 'reading copy' holds what there is now. */
  content: v.picklist(['whole', 'reading copy']),
  district: sayings,
  /** When it was written, ISO 8601 in UTC, by the clock of the device. */
  writtenAt: v.pipe(v.string(), v.isoTimestamp()),
  /** What was left out because nobody asked for it. */
  leftOut: v.strictObject({ crashes: v.boolean(), patientPhotos: v.boolean(), missingPhotos: v.array(hash) }),
  entries: v.pipe(
    v.array(v.strictObject({ name: v.pipe(v.string(), v.maxLength(100)), bytes: size, sha256: hash })),
    v.maxLength(limits.photos + 2),
  ),
});

/** The first entry of a book file: what the file is and what its other entries are. */
export type Manifest = v.InferOutput<typeof schema>;

/**
 * A manifest from its JSON. Throws a `UserError` for another format, a newer version (by its number) or an entry list that a
 * book file cannot have.
 */
export function readManifest(text: string, file: string): Manifest {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new UserError('file-manifest', `${file} has a manifest that is not JSON; take another copy of the book.`);
  }
  const version = versionOf(json);
  if (version !== null && version > FILE_VERSION) {
    throw new UserError(
      'file-newer',
      `${file} is a book file of version ${version}, this program reads up to version ${FILE_VERSION}; update the program.`,
    );
  }
  const parsed = v.safeParse(schema, json, { abortEarly: true });
  if (!parsed.success) {
    const where = (v.getDotPath(parsed.issues[0]) ?? 'form').slice(0, 60);
    throw new UserError(
      'file-manifest',
      `${file} has an unusable ${where} in its manifest; take another copy of the book.`,
    );
  }
  const { entries } = parsed.output;
  const names = new Set(entries.map(({ name }) => name));
  const bad = entries.find(({ name }) => name === 'manifest.json' || !isEntryName(name));
  const total = entries.reduce((sum, { bytes }) => sum + bytes, 0);
  const hasLog = names.has('log.jsonl');
  if (bad || names.size !== entries.length || total > limits.total || !names.has('snapshot.json')) {
    throw new UserError(
      'file-manifest',
      `${file} lists entries that a book file cannot have; take another copy of the book.`,
    );
  }
  if (hasLog !== (parsed.output.content === 'whole')) {
    throw new UserError(
      'file-manifest',
      `${file} says it is a ${parsed.output.content} and ${hasLog ? 'has' : 'lacks'} a log; take another copy of the book.`,
    );
  }
  return parsed.output;
}

const names = /^(manifest\.json|snapshot\.json|log\.jsonl|photos\/[0-9a-f]{64}\.(jpg|png|webp))$/;

/** True for the names that a book file may hold. */
export const isEntryName = (name: string): boolean => names.test(name);

/** The most bytes that an entry of a name may have. */
export function limitOf(name: string): number {
  if (name === 'manifest.json') return limits.manifest;
  if (name === 'snapshot.json') return limits.snapshot;
  return name === 'log.jsonl' ? limits.log : limits.photo;
}

function versionOf(json: unknown): number | null {
  const format =
    typeof json === 'object' && json !== null && Object.hasOwn(json, 'format')
      ? (json as { format: unknown }).format
      : null;
  const found = typeof format === 'string' ? /^brinkbook\/file@([1-9]\d{0,5})$/.exec(format) : null;
  return found ? Number(found[1]) : null;
}
