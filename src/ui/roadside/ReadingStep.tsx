import { useMemo, useState } from 'react';
import { independentReadings, type QuantityName, quantities } from '../../book/index.ts';
import { FOOT_M } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { isAwaited, useBook, useEditor, useStudy } from '../state/index.ts';
import { CorrectionForm, readingFigure, readingValue, takenRows } from '../study/index.ts';
import { Dial } from './Dial.tsx';
import { Choices, Keys } from './Keys.tsx';
import { StepSketch } from './StepSketch.tsx';
import type { StepProps } from './step-props.ts';

/** One number read on the ground: a worse one counts at once, a better one needs two readings, a name and a reason. */
export function ReadingStep({ site, study, units, today, quantity, onDone, onCannot }: Props) {
  const { desk } = useActions();
  const measurements = useBook((state) => state.measurements);
  const corrections = useBook((state) => state.corrections);
  const who = useEditor((state) => state.who);
  const [by, setBy] = useState(who);
  const row = useMemo(() => {
    const own = [...measurements.values()].filter(({ siteId }) => siteId === site.id);
    const words = [...corrections.values()].filter(({ siteId }) => siteId === site.id);
    return study && takenRows(study, own, words, [quantity]).find((one) => one.quantity === quantity);
  }, [study, site.id, measurements, corrections, quantity]);
  const isAngle = quantity.endsWith('Deg');
  const unit = isAngle ? '°' : units === 'us' ? ' ft' : ' m';
  const per = isAngle || units === 'metric' ? 1 : FOOT_M;
  const start = row?.computed ?? (isAngle ? 30 : 6);
  // A dial that nobody turned is no reading: it shows what is computed, as soon as that is there.
  const [read, setRead] = useState<number | null>(null);
  const turned = read !== null;
  const value = read ?? Math.round(start / per);
  const [loose, setLoose] = useState<string | null>(null);
  const { worse, least, most } = quantities[quantity];
  const metres = readingValue(value, isAngle ? 'degrees' : 'metres', units);
  const awaited = useStudy(isAwaited);
  const computed = row?.computed ?? null;
  const isWorse = computed === null || (worse === 'more' ? metres >= computed : metres <= computed);
  const taken = row?.readings.length ?? 0;
  const figure = `${value}${unit}`;
  const needsWord = row?.counts.waiting?.lacks.length === 1 && row.counts.waiting.lacks[0] !== 'second reading';
  const waiting = row?.counts.waiting ?? null;
  const second = independentReadings([...(row?.readings ?? []), { by, on: today }]);
  const isUp = quantity === 'slopeAboveDeg';
  const keep = (): void => {
    const stretch = quantity === 'angleDeg' ? (study?.angle?.stretchM ?? null) : null;
    desk.readings.add(
      site.id,
      {
        reading: { quantity, value: metres },
        tool: isAngle ? 'inclinometer' : 'tape',
        by,
        on: today,
        stretchM: stretch && { from: Math.max(0, stretch[0]), to: stretch[1] },
      },
      `${row?.label.toLowerCase() ?? quantity} ${figure}`,
    );
    setRead(null);
    if (isWorse) onDone(`${figure}${isUp ? `, ${loose ?? 'loose rock not looked for'}` : ''}`);
  };
  if (needsWord && row) {
    return (
      <>
        <CorrectionForm row={row} siteId={site.id} />
        <Keys
          main="go on without it"
          small="the computed value stays"
          onKeep={() =>
            onDone(`two readings, ${readingFigure(row.counts.waiting!.best, row.unit, units)}, not taken over`)
          }
          onCannot={onCannot}
        />
      </>
    );
  }
  if (row?.counts.betters) {
    const shown = readingFigure(row.counts.value!, row.unit, units);
    return (
      <>
        <p className="check-rule">
          {shown} counts, gentler than computed, by {row.counts.by}: {row.counts.reason}. A worse reading counts at
          once.
        </p>
        <Keys main={`go on with ${shown}`} onKeep={() => onDone(`${shown}, two readings`)} onCannot={onCannot} />
      </>
    );
  }
  const range = row?.range ? ([row.range[0] / per, row.range[1] / per] as const) : null;
  return (
    <>
      {study && <StepSketch {...{ study, quantity, units }} />}
      <Dial
        label={row?.label ?? 'Reading'}
        {...{ unit, value, range }}
        least={Math.ceil(least / per)}
        most={Math.floor(most / per)}
        step={isAngle ? 1 : units === 'us' ? 0.5 : 0.1}
        pxPer={isAngle ? 26 : units === 'us' ? 26 : 60}
        onTurn={setRead}
      />
      {isUp && (
        <Choices
          legend="Loose rock or leaning trees above"
          choices={['none seen', 'loose above']}
          chosen={loose}
          onChoose={setLoose}
        />
      )}
      {turned && !isWorse && (
        <label className="field">
          <span>Read by</span>
          <input value={by} maxLength={200} autoComplete="off" onChange={(event) => setBy(event.target.value)} />
        </label>
      )}
      {!turned && waiting ? (
        <Keys
          main="go on"
          small="the computed value stays"
          onKeep={() => onDone(`${readingFigure(waiting.best, row!.unit, units)}, not taken over`)}
          onCannot={onCannot}
        />
      ) : (
        <Keys
          main={turned ? `keep ${figure}` : 'turn to the reading'}
          disabled={!turned || by.trim() === ''}
          small={!turned ? undefined : keepWords(isWorse, taken, second)}
          onKeep={keep}
          onCannot={onCannot}
        />
      )}
      <p className="check-rule">
        {computed === null
          ? awaited
            ? 'What is computed here is still being worked out; a better reading than that does not count at once.'
            : 'Nothing was computed here: the reading counts.'
          : !turned
            ? 'A worse reading counts at once; a better one after two readings here by two people or on two days, a name and a reason.'
            : isWorse
              ? `${figure} is no better than ${readingFigure(computed, row!.unit, units)} computed: it counts at once.`
              : `${figure} is better than ${readingFigure(computed, row!.unit, units)} computed: it counts after two readings here by two people or on two days, a name and a reason.`}
      </p>
    </>
  );
}

/** What keeping a reading does. */
function keepWords(isWorse: boolean, taken: number, second: boolean): string {
  if (isWorse) return 'counts at once';
  if (taken === 0) return 'first of two readings';
  return second ? 'second of two readings' : 'another person must read it, or another day';
}

interface Props extends StepProps {
  readonly quantity: QuantityName;
}
