import * as v from 'valibot';
import { UserError } from '../../units/index.ts';
import { type RecordOf, type TableName, tables } from './tables.ts';

/**
 * A record of a table from whatever a file or a device gave. Fields that may be missing are filled in. Throws a `UserError`
 * that names table, id and field; `from` is the file or device for the sentence.
 */
export function readRecord<T extends TableName>(table: T, value: unknown, from: string): RecordOf<T> {
  const parsed = v.safeParse(tables[table] as v.GenericSchema<unknown, RecordOf<T>>, value, { abortEarly: true });
  if (parsed.success) return parsed.output;
  throw new UserError('book-record', `${from}: ${sentence(table, idOf(value), parsed.issues[0])}`);
}

/**
 * One value of a field, checked. Throws a `UserError` that names table, id and field, also where the table has no such field.
 */
export function readField(table: TableName, id: string, field: string, value: unknown, from: string): unknown {
  const entries = tables[table].entries as Record<string, v.GenericSchema>;
  const schema = field !== 'id' && Object.hasOwn(entries, field) ? entries[field] : undefined;
  if (!schema) {
    const name = clip(field);
    throw new UserError(
      'book-field',
      `${from}: ${table} "${id}" has a field "${name}" that no such record has; remove it.`,
    );
  }
  const parsed = v.safeParse(schema, value, { abortEarly: true });
  if (parsed.success && value !== undefined) return parsed.output;
  const issue = parsed.issues?.[0];
  throw new UserError(
    'book-field',
    `${from}: ${issue ? sentence(table, id, issue, field) : `${table} "${id}" has no value for ${field}; give one.`}`,
  );
}

function sentence(table: string, id: string, issue: v.BaseIssue<unknown>, field?: string): string {
  const path = clip([field, v.getDotPath(issue)].filter(Boolean).join('.') || 'form');
  const name = `${table} "${clip(id)}"`;
  if (issue.expected === 'never') return `${name} has a field "${path}" that no such record has; remove it.`;
  if (issue.type === 'strict_object' && issue.received === 'undefined') return `${name} has no ${path}; give one.`;
  const expected = issue.kind === 'schema' ? `expected ${issue.expected ?? 'another form'}` : issue.message;
  return `${name} has an unusable ${path}: ${clip(expected, 200)}, but ${clip(issue.received)} came; correct it.`;
}

const idOf = (value: unknown): string =>
  typeof value === 'object' && value !== null && 'id' in value ? String(value.id) : '(no id)';

const clip = (text: string, most = 60): string => (text.length > most ? `${text.slice(0, most)}…` : text);
