import type { MarkRecord } from '../../book/index.ts';
import { useActions } from '../desk-context.ts';
import { useBook, useReading, useTool } from '../state/index.ts';
import { Field } from './Field.tsx';
import { type FieldUnit, fieldUnits, shownSize, typedSize } from './size-field.ts';
import { useInSight } from './use-in-sight.ts';

const tall: readonly MarkRecord['kind'][] = ['tree', 'rock', 'pole', 'wire', 'wall', 'step', 'barrier'];

/** The mark in hand: its name and sizes, moving and deleting it. */
export function MarkPanel() {
  const { desk } = useActions();
  const mark = useBook((state) => state.marks.get(useTool.getState().markId ?? ''));
  const id = useTool((state) => state.markId);
  const tool = useTool((state) => state.tool);
  const units = useReading((state) => state.units);
  const panel = useInSight<HTMLElement>(id);
  if (!mark || mark.id !== id) return null;
  const words = mark.name ?? mark.kind;
  const edit = (set: Partial<Omit<MarkRecord, 'id'>>, what: string): void =>
    desk.marks.edit(mark.id, set, `${what} of ${words}`);
  const size = (field: 'trunkDiameterM' | 'heightM', unit: FieldUnit, what: string) => (typed: string) => {
    const metres = typedSize(typed, unit);
    if (metres !== undefined) edit({ [field]: metres }, what);
  };
  const { small, large } = fieldUnits(units);
  return (
    <section ref={panel} className="block panel mark-panel" aria-label={`Mark: ${words}`}>
      <div className="block-head">
        <h2>{mark.kind}</h2>
        <button type="button" className="key-quiet" onClick={() => desk.marks.take(null)}>
          close
        </button>
      </div>
      <div className="field-pair">
        <Field label="Name" value={mark.name ?? ''} onEdit={(name) => edit({ name: name.trim() || null }, 'Name')} />
        {mark.kind === 'tree' && (
          <Field
            label={`Trunk, ${small.word}`}
            inputMode="decimal"
            value={shownSize(mark.trunkDiameterM, small)}
            onEdit={size('trunkDiameterM', small, 'Trunk')}
          />
        )}
        {tall.includes(mark.kind) && (
          <Field
            label={`Height, ${large.word}`}
            inputMode="decimal"
            value={shownSize(mark.heightM, large)}
            onEdit={size('heightM', large, 'Height')}
          />
        )}
      </div>
      {(mark.kind === 'tree' || mark.kind === 'rock') && (
        <label className="tick">
          <input
            type="checkbox"
            checked={mark.soundAtLook === true}
            onChange={(event) => edit({ soundAtLook: event.target.checked }, 'Look')}
          />
          {mark.kind === 'tree' ? 'alive and rooted when looked at' : 'did not move when looked at'}
        </label>
      )}
      <Field label="Notes" value={mark.notes} lines={2} onEdit={(notes) => edit({ notes }, 'Notes')} />
      <div className="form-keys">
        <button type="button" className="key" aria-pressed={tool === 'move'} onClick={() => desk.tap.take('move')}>
          {tool === 'move' ? 'Tap its new place' : 'Move'}
        </button>
        <button type="button" className="key-quiet accent" onClick={() => desk.marks.remove(mark.id)}>
          delete
        </button>
      </div>
    </section>
  );
}
