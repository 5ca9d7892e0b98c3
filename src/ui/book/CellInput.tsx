import { defaultFleet, defaultKits, live } from '../../book/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { type Column, unitOf } from './cells/index.ts';
import { recordWords, useWholeBook } from './use-whole-book.ts';

/** The field, list or choice in which a column's value is written. `onEnter` where the writing is done. */
export function CellInput({ id, column, typed, units, describedBy, onType, onEnter, onBack }: Props) {
  const { kind, label, hint, empty } = column;
  const unit = unitOf(column, units);
  const words = unit ? `${label}, ${unit}` : label;
  if (kind === 'some of' || kind === 'choices') {
    return <Some {...{ column, typed }} label={words} onEnter={onEnter} />;
  }
  const shared = { id, 'aria-describedby': describedBy, 'aria-invalid': describedBy !== undefined };
  const keys = (event: React.KeyboardEvent): void => {
    if (event.key === 'Escape') onBack();
    if (event.key === 'Enter' && kind !== 'notes' && kind !== 'area') {
      event.preventDefault();
      onEnter(typed);
    }
  };
  const text = {
    ...shared,
    value: typed,
    placeholder: hint ?? (empty ? 'not told' : undefined),
    onChange: (event: { target: { value: string } }) => onType(event.target.value),
    onBlur: () => onEnter(typed),
    onKeyDown: keys,
  };
  return (
    <label className="field" htmlFor={id}>
      <span>{words}</span>
      {kind === 'choice' || kind === 'flag' || kind === 'one of' ? (
        <Choice {...{ column, typed, shared }} onEnter={onEnter} />
      ) : kind === 'notes' || kind === 'area' ? (
        <textarea rows={kind === 'area' ? 3 : 2} {...text} />
      ) : (
        <input
          type={kind === 'day' ? 'date' : 'text'}
          inputMode={['number', 'length', 'mass', 'force'].includes(kind) ? 'decimal' : undefined}
          autoComplete="off"
          {...text}
        />
      )}
    </label>
  );
}

interface Props {
  readonly id: string;
  readonly column: Column;
  readonly typed: string;
  readonly units: UnitSystem;
  readonly describedBy?: string | undefined;
  onType(text: string): void;
  onEnter(text: string): void;
  onBack(): void;
}

interface Some {
  readonly column: Column;
  readonly typed: string;
  onEnter(text: string): void;
}

function Choice({ column, typed, shared, onEnter }: Some & { readonly shared: object }) {
  const choices = useChoices(column);
  const list = column.kind === 'flag' ? ['yes', 'no'].map((word) => ({ value: word, words: word })) : choices;
  const strange = typed !== '' && !list.some(({ value }) => value === typed);
  return (
    <select {...shared} value={typed} onChange={(event) => onEnter(event.target.value)}>
      {(column.empty || typed === '') && <option value="">{column.kind === 'flag' ? 'either way' : 'none'}</option>}
      {strange && <option value={typed}>{typed}, not in the book</option>}
      {list.map(({ value, words }) => (
        <option key={value} value={value}>
          {words}
        </option>
      ))}
    </select>
  );
}

function Some({ column, typed, label, onEnter }: Some & { readonly label: string }) {
  const choices = useChoices(column);
  const picked = typed.split(', ').filter(Boolean);
  const lost = picked.filter((one) => !choices.some(({ value }) => value === one));
  const turn = (value: string, on: boolean): void =>
    onEnter((on ? [...picked, value] : picked.filter((one) => one !== value)).join(', '));
  return (
    <fieldset className="some-of">
      <legend>{label}</legend>
      {choices.length + lost.length === 0 && <span className="note">none in the book yet</span>}
      {[...choices, ...lost.map((value) => ({ value, words: `${value}, not in the book` }))].map(({ value, words }) => (
        <label key={value} className="tick">
          <input
            type="checkbox"
            checked={picked.includes(value)}
            onChange={(event) => turn(value, event.target.checked)}
          />{' '}
          {words}
        </label>
      ))}
    </fieldset>
  );
}

function useChoices({ options, table }: Column): { readonly value: string; readonly words: string }[] {
  const book = useWholeBook();
  if (options) return options.map((value) => ({ value, words: value }));
  if (!table || !book) return [];
  const own = live(book, table).map((record) => ({ value: record.id, words: recordWords(table, record) }));
  const shipped = table === 'kits' ? defaultKits : table === 'fleet' ? defaultFleet : [];
  return own.length > 0 ? own : shipped.map(({ id, name }) => ({ value: id, words: `${name}, shipped` }));
}
