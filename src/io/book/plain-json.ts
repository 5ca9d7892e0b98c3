import * as v from 'valibot';
import { UserError } from '../../units/index.ts';

/** A JSON text with the name of its file for sentences. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}…` : text);

/** The value of a JSON text after a schema; throws `UserError` with one sentence that says what is wrong and where. */
export function readPlain<T>({ name, text }: NamedText, schema: v.GenericSchema<unknown, T>, what: string): T {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new UserError('book-not-json', `${name} is not JSON; expected ${what}, save it as JSON.`);
  }
  const parsed = v.safeParse(schema, json, { abortEarly: true });
  if (parsed.success) return parsed.output;
  const issue = parsed.issues[0];
  const where = clip(v.getDotPath(issue) ?? 'the whole');
  const expected = issue.kind === 'schema' ? `expected ${issue.expected ?? 'another form'}` : issue.message;
  throw new UserError(
    'book-shape',
    `${name}: ${where} is unusable: ${expected}, but ${clip(issue.received)} came; correct it in the list of ${what}.`,
  );
}
