import { type FormEvent, useId, useState } from 'react';
import { readRecord, type TableName } from '../../book/index.ts';
import { UserError } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { useReading } from '../state/index.ts';
import { CellInput } from './CellInput.tsx';
import { type Column, cellValue, fieldWith } from './cells/index.ts';

/** Writes a new record: every field at once, checked whole; a refusal is told below and what was typed stays. */
export function AddRecord({ table, columns, what, given = {} }: Props) {
  const { desk } = useActions();
  const units = useReading((state) => state.units);
  const id = useId();
  const [open, setOpen] = useState(false);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [why, setWhy] = useState<string | null>(null);
  const key = ({ field, part }: Column): string => (part ? `${field}.${part}` : field);
  const onSubmit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    try {
      const record: Record<string, unknown> & { id: string } = {
        ...given,
        id: `${table}-${crypto.randomUUID().slice(0, 13)}`,
      };
      for (const column of columns) {
        const value = cellValue(column, typed[key(column)] ?? '', units);
        record[column.field] = fieldWith(record, column, value);
      }
      const { id: newId, ...set } = readRecord(table, record, 'This entry') as unknown as typeof record;
      setWhy(null);
      if (!(await desk.edit(`Add ${what}`, [{ table, id: newId, set }]))) {
        setWhy('Not saved: see the line at the top.');
        return;
      }
      setTyped({});
      setOpen(false);
    } catch (error) {
      if (!(error instanceof UserError)) throw error;
      setWhy(error.message.replace(` "${table}-`, ' "').replace(/ "[0-9a-f-]{13}"/, ''));
    }
  };
  if (!open) {
    return (
      <button type="button" className="key-quiet add-record" onClick={() => setOpen(true)}>
        add {what}
      </button>
    );
  }
  return (
    <form className="ledger-row ledger-add" onSubmit={(event) => void onSubmit(event)} aria-label={`Add ${what}`}>
      {columns.map((column) => (
        <CellInput
          key={key(column)}
          id={`${id}-${key(column)}`}
          column={column}
          typed={typed[key(column)] ?? ''}
          units={units}
          onType={(text) => setTyped((before) => ({ ...before, [key(column)]: text }))}
          onEnter={(text) => setTyped((before) => ({ ...before, [key(column)]: text }))}
          onBack={() => setOpen(false)}
        />
      ))}
      {why && (
        <p className="field-why" role="alert">
          {why}
        </p>
      )}
      <div className="form-keys">
        <button type="submit" className="key">
          Add
        </button>
        <button type="button" className="key-quiet" onClick={() => setOpen(false)}>
          not now
        </button>
      </div>
    </form>
  );
}

interface Props {
  readonly table: TableName;
  readonly columns: readonly Column[];
  /** With its article: "a rope". */
  readonly what: string;
  /** Fields that the place decides, such as the kit of a rope. */
  readonly given?: Readonly<Record<string, unknown>> | undefined;
}
