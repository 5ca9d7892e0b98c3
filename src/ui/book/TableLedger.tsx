import type { ReactNode } from 'react';
import type { RecordOf } from '../../book/index.ts';
import { useActions } from '../desk-context.ts';
import { AddRecord } from './AddRecord.tsx';
import { columns as allColumns, type Column, type LedgerTable } from './cells/index.ts';
import { LedgerField } from './LedgerField.tsx';
import { recordWords } from './use-whole-book.ts';

/** Records of one table as ruled rows; each value can be written over, each row struck out and brought back by undo. */
export function TableLedger<T extends LedgerTable>({ table, records, what, given, under }: Props<T>) {
  const { desk } = useActions();
  const columns: readonly Column[] = allColumns[table];
  return (
    <>
      <ul className="ledger">
        {records.map((record) => (
          <li key={record.id} className="ledger-row" aria-label={recordWords(table, record)}>
            {columns.map((column) => (
              <LedgerField key={`${column.field}.${column.part ?? ''}`} {...{ table, record, column }} />
            ))}
            <button
              type="button"
              className="strike"
              aria-label={`Delete ${recordWords(table, record)}`}
              onClick={() =>
                void desk.edit(`Delete ${recordWords(table, record)}`, [
                  { table, id: record.id, set: { deleted: true } },
                ])
              }
            >
              delete
            </button>
            {under && <div className="ledger-under">{under(record)}</div>}
          </li>
        ))}
      </ul>
      <AddRecord {...{ table, columns, what, given }} />
    </>
  );
}

interface Props<T extends LedgerTable> {
  readonly table: T;
  readonly records: readonly RecordOf<T>[];
  readonly what: string;
  readonly given?: Readonly<Record<string, unknown>>;
  /** What belongs to a record, below it. */
  under?(record: RecordOf<T>): ReactNode;
}
