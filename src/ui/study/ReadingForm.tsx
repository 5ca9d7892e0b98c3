import { type FormEvent, useState } from 'react';
import { quantities, readingTools } from '../../book/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { typedNumber } from '../survey/typed-number.ts';
import { readingFigure, readingUnit, readingValue } from './reading-words.ts';
import type { TakenRow } from './taken-rows.ts';

/** One reading: value, tool, who and when. An angle counts for the steepest stretch unless somebody says otherwise. */
export function ReadingForm({ row, siteId, units, stretchM, onDone }: Props) {
  const { desk } = useActions();
  const [problem, setProblem] = useState<string | null>(null);
  const { quantity, unit, label } = row;
  const { least, most } = quantities[quantity];
  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const typed = typedNumber(String(data.get('value')));
    const by = String(data.get('by')).trim();
    const value = typed === null ? Number.NaN : readingValue(typed, unit, units);
    const wrong = value >= least && value <= most ? null : outOfBounds(row, String(data.get('value')), units);
    if (wrong || by === '') {
      setProblem(wrong ?? 'Say who read it.');
      return;
    }
    const tool = readingTools.find((name) => name === data.get('tool')) ?? 'other';
    const steepest = quantity === 'angleDeg' && data.get('steepest') === 'on' && stretchM;
    desk.readings.add(
      siteId,
      {
        reading: { quantity, value },
        tool,
        by,
        on: String(data.get('on')),
        stretchM: steepest ? { from: Math.max(0, stretchM[0]), to: stretchM[1] } : null,
      },
      `${label.toLowerCase()} ${readingFigure(value, unit, units)}`,
    );
    onDone();
  };
  return (
    <form className="reading-form" onSubmit={onSubmit} aria-label={`Reading: ${label}`}>
      <label className="field">
        <span>
          {label}, {readingUnit(unit, units)}
        </span>
        {/* biome-ignore lint/a11y/noAutofocus: somebody has just asked for this field. */}
        <input name="value" inputMode="decimal" autoFocus autoComplete="off" />
      </label>
      <label className="field">
        <span>Tool</span>
        <select name="tool" defaultValue={unit === 'degrees' ? 'inclinometer' : 'tape'}>
          {readingTools.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      </label>
      <label className="field">
        <span>By</span>
        <input name="by" autoComplete="name" />
      </label>
      <label className="field">
        <span>On</span>
        <input name="on" type="date" defaultValue={new Date().toISOString().slice(0, 10)} required />
      </label>
      {quantity === 'angleDeg' && (
        <label className="tick">
          <input name="steepest" type="checkbox" defaultChecked /> read on the steepest stretch
        </label>
      )}
      {problem && (
        <p className="form-problem" role="alert">
          {problem}
        </p>
      )}
      <div className="form-keys">
        <button type="submit" className="key">
          Enter
        </button>
        <button type="button" className="key-quiet" onClick={onDone}>
          not now
        </button>
      </div>
    </form>
  );
}

function outOfBounds({ quantity, unit, label }: TakenRow, typed: string, units: UnitSystem): string {
  const { least, most } = quantities[quantity];
  const range = `${readingFigure(least, unit, units)} to ${readingFigure(most, unit, units)}`;
  return `"${typed}" is no ${label.toLowerCase()}; give a number of ${readingUnit(unit, units)}, ${range}.`;
}

interface Props {
  readonly row: TakenRow;
  readonly siteId: string;
  readonly units: UnitSystem;
  readonly stretchM: readonly [number, number] | null;
  onDone(): void;
}
