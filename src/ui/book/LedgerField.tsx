import { useEffect, useId, useState } from 'react';
import type { RecordOf, TableName } from '../../book/index.ts';
import { useActions } from '../desk-context.ts';
import { useReading } from '../state/index.ts';
import { CellInput } from './CellInput.tsx';
import { type Column, cellText, checkCell, valueIn } from './cells/index.ts';
import { recordWords } from './use-whole-book.ts';

/** One value of one record. It is changed when it is left or Enter is pressed; a refusal stands beside it and what was typed stays. */
export function LedgerField<T extends TableName>({ table, record, column }: Props<T>) {
  const { desk } = useActions();
  const units = useReading((state) => state.units);
  const id = useId();
  const plain = record as unknown as Record<string, unknown> & { id: string };
  const kept = cellText(column, valueIn(plain, column), units);
  const [typed, setTyped] = useState(kept);
  const [why, setWhy] = useState<string | null>(null);
  useEffect(() => {
    setTyped(kept);
    setWhy(null);
  }, [kept]);
  const enter = async (text: string): Promise<void> => {
    setTyped(text);
    if (text === kept) {
      setWhy(null);
      return;
    }
    const checked = checkCell(table, plain, column, text, units);
    if ('why' in checked) {
      setWhy(checked.why);
      return;
    }
    setWhy(null);
    const label = `${column.label} of ${recordWords(table, record)}`;
    const done = await desk.edit(label, [{ table, id: record.id, set: { [column.field]: checked.value } }]);
    if (!done) setWhy('Not saved: see the line at the top; what you typed is still here.');
  };
  const back = (): void => {
    setTyped(kept);
    setWhy(null);
  };
  return (
    <div className="ledger-field" data-kind={column.kind}>
      <CellInput
        {...{ id, column, typed, units }}
        describedBy={why === null ? undefined : `${id}-why`}
        onType={setTyped}
        onEnter={(text) => void enter(text)}
        onBack={back}
      />
      {why !== null && (
        <p className="field-why" id={`${id}-why`} role="alert">
          {why}
        </p>
      )}
    </div>
  );
}

interface Props<T extends TableName> {
  readonly table: T;
  readonly record: RecordOf<T>;
  readonly column: Column;
}
