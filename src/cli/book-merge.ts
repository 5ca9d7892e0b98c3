import { mergeBookFiles, type NamedBookFile } from '../io/book-file/log/index.ts';
import { readBook, writeBookFile } from '../io/index.ts';
import { fileSource, writeWhole } from '../io/node/index.ts';
import { UserError } from '../units/index.ts';
import { UsageError } from './arguments.ts';
import { readFilesAndOptions } from './book-arguments.ts';

/**
 * `book merge A B --out C`: the union of two book files. What either holds is kept, crash records and photos that show a patient
 * as well: they were asked for when A and B were written.
 */
export async function mergeBooks(args: string[]): Promise<void> {
  const { files, given } = readFilesAndOptions(args, 2, 'merge takes two files', {
    out: { type: 'string' },
    json: { type: 'boolean' },
  });
  if (given.out === undefined) throw new UsageError('--out is missing; see --help.');
  const sources = files.map((name) => fileSource(name));
  try {
    const read: NamedBookFile[] = [];
    // One by one: where the first cannot be used, nothing is still read of the second when both are closed.
    for (const source of sources)
      read.push({ name: source.name, file: (await readBook(source)).file ?? refuse(source.name) });
    const [a, b] = read as [NamedBookFile, NamedBookFile];
    const merged = await mergeBookFiles(a, b);
    const leftOut = (what: 'crashes' | 'patientPhotos'): boolean =>
      a.file.manifest.leftOut[what] && b.file.manifest.leftOut[what];
    const bytes = await writeBookFile(merged, {
      asked: { crashes: !leftOut('crashes'), patientPhotos: !leftOut('patientPhotos') },
      writtenAtMs: Date.now(),
    });
    await writeWhole(given.out, bytes);
    const done = {
      out: given.out,
      edits: merged.log!.length,
      ...merged.added,
      contested: merged.book.contested.length,
    };
    process.stdout.write(
      given.json
        ? `${JSON.stringify(done, null, 1)}\n`
        : `${given.out}: ${done.edits} edits; ${done.toA} new to ${a.name}, ${done.toB} new to ${b.name}; ${done.contested} fields with more than one value to decide on\n`,
    );
  } finally {
    await Promise.all(sources.map((source) => source.close?.()));
  }
}

function refuse(name: string): never {
  throw new UserError(
    'merge-plain',
    `${name} is a plain book without the history of its edits; merge takes files NAME.brinkbook.`,
  );
}
