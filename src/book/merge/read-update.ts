import * as v from 'valibot';
import { UserError } from '../../units/index.ts';
import { idPattern } from '../schema/index.ts';
import { isNewer } from './upcast.ts';
import { type Update, updateId } from './update.ts';

const id = v.pipe(
  v.string(),
  v.check((text) => idPattern.test(text), 'expected an id'),
);
const whole = (least: number, most: number) =>
  v.pipe(
    v.number(),
    v.check((value) => Number.isInteger(value) && value >= least && value <= most, `expected ${least} to ${most}`),
  );
const idOfUpdate = v.pipe(
  v.string(),
  v.check((text) => /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}:[1-9]\d{0,12}$/.test(text), 'expected the id of an update'),
);
const text = v.pipe(
  v.string(),
  v.check((words) => words.length <= 200 && !/\p{Surrogate}/u.test(words), 'expected at most 200 whole characters'),
);
const few = <S extends v.GenericSchema>(item: S, most: number) =>
  v.pipe(
    v.array(item),
    v.check((list) => list.length <= most, `expected at most ${most}`),
  );

const over = few(idOfUpdate, 1000);
const five = v.strictTuple([v.string(), id, v.string(), v.unknown(), over]);
const six = v.strictTuple([v.string(), id, v.string(), v.unknown(), over, idOfUpdate]);
const op = v.lazy((input) => (Array.isArray(input) && input.length === 6 ? six : five));

const update = v.strictObject({
  v: whole(1, 1e6),
  actor: id,
  n: whole(1, 1e12),
  t: v.strictTuple([whole(0, 8.64e15), whole(0, 2 ** 40)]),
  who: text,
  device: text,
  label: text,
  ops: few(op, 1_000_000),
  undoes: v.exactOptional(idOfUpdate),
  redoes: v.exactOptional(idOfUpdate),
  after: v.exactOptional(few(v.strictTuple([id, whole(0, 1e12)]), 10_000)),
});
/** Of a newer version only what is needed to keep it and pass it on. */
const newerUpdate = v.looseObject({ v: whole(1, 1e6), actor: id, n: whole(1, 1e12) });

/**
 * An update from whatever a file or a wire gave: its form is checked here, its values in `currentOps`. Throws a `UserError`;
 * `from` names the file. An update of a newer version comes through as it is.
 */
export function readUpdate(json: unknown, from: string): Update {
  const newer = v.safeParse(newerUpdate, json);
  if (newer.success && isNewer(newer.output as unknown as Update)) return json as Update;
  const parsed = v.safeParse(update, json, { abortEarly: true });
  if (!parsed.success) {
    const issue = parsed.issues[0];
    const name = newer.success ? updateId(newer.output) : '(no id)';
    const expected = issue.kind === 'schema' ? `expected ${issue.expected}` : issue.message;
    throw new UserError(
      'update-shape',
      `${from}: update ${name} has an unusable ${v.getDotPath(issue) ?? 'form'}: ${expected}, but ${issue.received.slice(0, 60)} came; take another copy.`,
    );
  }
  const found = parsed.output as Update;
  const own = updateId(found);
  const twice =
    new Set(found.ops.map(([table, record, field]) => `${table}/${record}/${field}`)).size < found.ops.length;
  const ahead = found.ops.some(([, , , , over]) => over.some((other) => isOwnLater(other, found)));
  if (twice || ahead) {
    throw new UserError(
      'update-ops',
      `${from}: update ${own} ${twice ? 'writes a field twice' : 'replaces what came after it'}; take another copy.`,
    );
  }
  return found;
}

const isOwnLater = (other: string, { actor, n }: Update): boolean =>
  other.startsWith(`${actor}:`) && Number(other.slice(actor.length + 1)) >= n;
