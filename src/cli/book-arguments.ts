import { type ParseArgsConfig, parseArgs } from 'node:util';
import { UsageError } from './arguments.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** Options of a command that also takes files, strictly: `files` is how many, named in `what` for the sentence. */
export function readFilesAndOptions<T extends Options>(args: string[], files: number, what: string, options: T) {
  let read: ReturnType<typeof parseArgs<{ args: string[]; options: T; strict: true; allowPositionals: true }>>;
  try {
    read = parseArgs({ args, options, strict: true, allowPositionals: true });
  } catch (error) {
    const sentence = error instanceof Error ? error.message.split('. ')[0]! : 'The options cannot be read';
    throw new UsageError(`${sentence}; see --help.`);
  }
  if (read.positionals.length !== files) {
    throw new UsageError(`${what}, but ${read.positionals.length} came; see --help.`);
  }
  return { files: read.positionals, given: read.values };
}
