import { lazy, Suspense, useMemo, useState } from 'react';
import type { QuantityName } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { useBook } from '../state/index.ts';
import { Figure } from './Figure.tsx';
import { apartWords, readingFigure, usedWords } from './reading-words.ts';
import { furtherQuantities, quantityLabel, type TakenRow, takenRows } from './taken-rows.ts';
import { whyOrigin } from './why.ts';

/** The forms are loaded when somebody enters something. */
const ReadingForm = lazy(async () => ({ default: (await import('./ReadingForm.tsx')).ReadingForm }));
const CorrectionForm = lazy(async () => ({ default: (await import('./CorrectionForm.tsx')).CorrectionForm }));

/** What was computed beside what was taken on the ground, how far apart, and which counts. */
export function TakenBlock({ study, siteId, units }: Props) {
  const measurements = useBook((state) => state.measurements);
  const corrections = useBook((state) => state.corrections);
  const [asked, setAsked] = useState<QuantityName[]>([]);
  const [entering, setEntering] = useState<QuantityName | null>(null);
  const rows = useMemo(() => {
    const own = [...measurements.values()].filter((one) => one.siteId === siteId);
    const words = [...corrections.values()].filter((one) => one.siteId === siteId);
    return takenRows(study, own, words, asked);
  }, [study, siteId, measurements, corrections, asked]);
  return (
    <section className="block" aria-labelledby="taken-head">
      <div className="block-head">
        <h2 id="taken-head">Taken on the ground</h2>
        <span className="note">
          {siteId
            ? 'worse counts at once, better needs two people or two days'
            : 'keep the point as a site to enter readings'}
        </span>
      </div>
      <table className="numbers taken">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">computed</th>
            <th scope="col">measured</th>
            <th scope="col">apart</th>
            <th scope="col">used</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <TakenLine
              key={row.quantity}
              {...{ row, study, units, siteId }}
              entering={entering === row.quantity}
              onEnter={(on) => setEntering(on ? row.quantity : null)}
            />
          ))}
        </tbody>
      </table>
      {siteId && (
        <label className="note more-readings">
          another reading{' '}
          <select
            value=""
            onChange={(event) => {
              const name = event.target.value as QuantityName;
              setAsked([...asked, name]);
              setEntering(name);
            }}
          >
            <option value="">choose</option>
            {furtherQuantities.map((name) => (
              <option key={name} value={name}>
                {quantityLabel(name)}
              </option>
            ))}
          </select>
        </label>
      )}
    </section>
  );
}

interface Props {
  readonly study: Study;
  readonly siteId: string | null;
  readonly units: UnitSystem;
}

interface LineProps extends Props {
  readonly row: TakenRow;
  readonly entering: boolean;
  onEnter(on: boolean): void;
}

function TakenLine({ row, study, units, siteId, entering, onEnter }: LineProps) {
  const { desk } = useActions();
  const { computed, range, unit, readings, counts, label, path } = row;
  const told = study.field.find(({ quantity }) => quantity === row.quantity);
  const shown = (value: number): string => readingFigure(value, unit, units);
  const rangeWords =
    range &&
    (unit === 'degrees'
      ? `${Math.floor(range[0])} to ${Math.ceil(range[1])}`
      : `${shown(range[0])} to ${shown(range[1])}`);
  return (
    <>
      <tr>
        <th scope="row">{label}</th>
        <td>
          {computed === null || !Number.isFinite(computed) ? (
            <span className="note">{computed === null ? 'not found' : 'not computed'}</span>
          ) : (
            <Figure why={whyOrigin(study, path, label)} ink="computed">
              {unit === 'degrees' ? `${Math.round(computed)}°` : shown(computed)}
            </Figure>
          )}{' '}
          <span className="note num">{rangeWords}</span>
        </td>
        <td>
          {readings.map(({ id, reading, tool, by, on }) => (
            <span key={id} className="reading">
              <b className="measured num" title={`${by}, ${on}`}>
                {shown(reading.value)}
              </b>{' '}
              <span className="note">{tool}</span>
              <button
                type="button"
                className="reading-gone"
                aria-label={`Delete the reading ${shown(reading.value)}`}
                onClick={() => desk.readings.remove(id)}
              >
                ×
              </button>
            </span>
          ))}
          {counts.waiting && <span className="note accent">{counts.waiting.readings} of 2 </span>}
          {siteId && !entering && (
            <button type="button" className="to-enter" onClick={() => onEnter(true)}>
              {readings.length > 0 ? 'again' : 'tap to enter'}
            </button>
          )}
        </td>
        <td className={told?.beyond ? 'num accent' : 'num'}>{apartWords(row, units)}</td>
        <td className={counts.how === 'measured' ? 'used is-measured' : 'used'}>{usedWords(row)}</td>
      </tr>
      {told && (told.why || told.beyond) && (
        <tr>
          <td colSpan={5} className="note">
            {told.why && `Measured ${shown(told.measured)}, not taken over: ${told.why}. `}
            {told.beyond &&
              'Computed and measured lie farther apart than their errors explain: find out which is wrong.'}
          </td>
        </tr>
      )}
      {entering && siteId && (
        <tr>
          <td colSpan={5}>
            <Suspense fallback={null}>
              <ReadingForm
                row={row}
                siteId={siteId}
                units={units}
                stretchM={study.angle?.stretchM ?? null}
                onDone={() => onEnter(false)}
              />
            </Suspense>
          </td>
        </tr>
      )}
      {siteId && counts.waiting?.lacks.length === 1 && counts.waiting.lacks[0] !== 'second reading' && (
        <tr>
          <td colSpan={5}>
            <Suspense fallback={null}>
              <CorrectionForm row={row} siteId={siteId} />
            </Suspense>
          </td>
        </tr>
      )}
    </>
  );
}
