import { landingZoneSideM, type SupportPlaceRecord } from '../../book/index.ts';
import { placeSizeWords } from '../../plan/index.ts';
import { formatLength } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { useBook, useReading, useTool } from '../state/index.ts';
import { Field } from './Field.tsx';
import { fieldUnits, shownSize, typedSize } from './size-field.ts';
import { useInSight } from './use-in-sight.ts';

const kinds: readonly SupportPlaceRecord['kind'][] = ['landing zone', 'staging', 'parking'];

/** The landing zone, staging or parking in hand: its name and size, what is dangerous there, moving and deleting it. */
export function PlacePanel() {
  const { desk } = useActions();
  const id = useTool((state) => state.markId);
  const tool = useTool((state) => state.tool);
  const place = useBook((state) => (id === null ? undefined : state.supportPlaces.get(id)));
  const units = useReading((state) => state.units);
  const panel = useInSight<HTMLElement>(id);
  if (!place) return null;
  const edit = (set: Partial<Omit<SupportPlaceRecord, 'id'>>, what: string): void =>
    desk.marks.editPlace(place.id, set, `${what} of ${place.name}`);
  const { large } = fieldUnits(units);
  const side = (field: 'lengthM' | 'widthM', what: string) => (
    <Field
      label={`${what}, ${large.word}`}
      inputMode="decimal"
      value={shownSize(place[field], large)}
      onEdit={(typed) => {
        const metres = typedSize(typed, large);
        if (metres !== undefined) edit({ [field]: metres }, what);
      }}
    />
  );
  return (
    <section ref={panel} className="block panel mark-panel" aria-label={`Place: ${place.name}`}>
      <div className="block-head">
        <h2>{place.kind}</h2>
        <button type="button" className="key-quiet" onClick={() => desk.marks.take(null)}>
          close
        </button>
      </div>
      <div className="field-pair">
        <Field label="Name" value={place.name} onEdit={(name) => name.trim() && edit({ name: name.trim() }, 'Name')} />
        <label className="field">
          <span>Kind</span>
          <select
            value={place.kind}
            onChange={(event) => edit({ kind: event.target.value as SupportPlaceRecord['kind'] }, 'Kind')}
          >
            {kinds.map((kind) => (
              <option key={kind}>{kind}</option>
            ))}
          </select>
        </label>
      </div>
      <div className="field-pair">
        {side('lengthM', 'Length')}
        {side('widthM', 'Width')}
        {place.kind !== 'landing zone' && (
          <Field
            label="Vehicles"
            inputMode="numeric"
            value={place.vehicles === null ? '' : String(place.vehicles)}
            onEdit={(typed) => {
              const vehicles = typed.trim() === '' ? null : Number(typed);
              if (vehicles === null || (Number.isInteger(vehicles) && vehicles >= 0 && vehicles <= 500))
                edit({ vehicles }, 'Vehicles');
            }}
          />
        )}
      </div>
      {place.kind === 'landing zone' && (
        <p className="note zone-size" role="status">
          {capital(placeSizeWords(place, units))}. A helicopter asks for{' '}
          {formatLength(landingZoneSideM.day, units, 'up')} each way by day,{' '}
          {formatLength(landingZoneSideM.night, units, 'up')} by night, near level and free of wires; the pilot has the
          last word.
        </p>
      )}
      <Field
        label="Hazards: wires, poles, loose ground, slope"
        value={place.hazards}
        lines={2}
        onEdit={(hazards) => edit({ hazards }, 'Hazards')}
      />
      <Field label="Notes" value={place.notes} lines={2} onEdit={(notes) => edit({ notes }, 'Notes')} />
      <div className="field-pair">
        <Field label="Looked at by" value={place.by ?? ''} onEdit={(by) => edit({ by: by.trim() || null }, 'Name')} />
        <Field label="On" type="date" value={place.on ?? ''} onEdit={(on) => edit({ on: on || null }, 'Day')} />
      </div>
      <div className="form-keys">
        <button type="button" className="key" aria-pressed={tool === 'move'} onClick={() => desk.tap.take('move')}>
          {tool === 'move' ? 'Tap its new place' : 'Move'}
        </button>
        <button type="button" className="key-quiet accent" onClick={() => desk.marks.remove(place.id)}>
          delete
        </button>
      </div>
    </section>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
