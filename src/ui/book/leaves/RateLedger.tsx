import { useEffect, useId, useState } from 'react';
import { live, type RateName, type RateRecord, rateNames, rateRow } from '../../../book/index.ts';
import { useActions } from '../../desk-context.ts';
import { useEditor } from '../../state/index.ts';
import { typedNumber } from '../../survey/typed-number.ts';
import type { LeafProps } from './leaf-props.ts';

/** Every rate: what is shipped with its bounds and its source, and the district's own beside it. */
export function RateLedger({ book }: LeafProps) {
  const own = new Map(live(book, 'rates').map((rate) => [rate.id, rate]));
  return (
    <>
      <h3>Rates, frictions, factors</h3>
      <p className="note">
        Shipped figures err to the cautious side. Another one is taken within its bounds, with a reason; empty goes back
        to what is shipped. They are kept in metres, kilograms and kilonewtons.
      </p>
      <div className="rates-scroll">
        <table className="numbers rates">
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Shipped</th>
              <th scope="col">Bounds</th>
              <th scope="col">Source</th>
              <th scope="col">Ours</th>
              <th scope="col">Reason</th>
            </tr>
          </thead>
          <tbody>
            {rateNames.map((name) => (
              <RateLine key={name} name={name} rate={own.get(name)} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function RateLine({ name, rate }: { readonly name: RateName; readonly rate: RateRecord | undefined }) {
  const { desk } = useActions();
  const id = useId();
  const { value, least, most, unit, source, note } = rateRow(name);
  const kept = rate ? String(rate.value) : '';
  const [typed, setTyped] = useState(kept);
  const [reason, setReason] = useState(rate?.reason ?? '');
  const [why, setWhy] = useState<string | null>(null);
  useEffect(() => setTyped(kept), [kept]);
  const set = (fields: Record<string, unknown>): void =>
    void desk
      .edit(`Rate: ${note}`, [{ table: 'rates', id: name, set: { ...fields, by: useEditor.getState().who } }])
      .then((done) => setWhy(done ? null : 'Not saved: see the line at the top; what you typed is still here.'));
  const enter = (): void => {
    if (typed === kept && reason === (rate?.reason ?? '')) {
      setWhy(null);
      return;
    }
    const figure = typedNumber(typed);
    if (figure === null && rate) set({ deleted: true });
    else if (figure === null) setWhy(null);
    else if (!(figure >= least && figure <= most))
      setWhy(`"${typed}" came: expected ${least} to ${most} ${unit}; correct it or leave it empty.`);
    else if (reason.trim() === '') setWhy('Give the reason beside it; then it is taken.');
    else set({ value: figure, reason: reason.trim(), deleted: false });
  };
  const keys = (event: React.KeyboardEvent): void => {
    if (event.key === 'Enter') enter();
    if (event.key === 'Escape') setTyped(kept);
  };
  return (
    <tr>
      <th scope="row" id={`${id}-name`}>
        {note}
      </th>
      <td className="num">
        {value} {unit}
      </td>
      <td className="num">
        {least} to {most}
      </td>
      <td className="note">{source === 'practice' ? <i className="assumed">common practice</i> : source}</td>
      <td>
        <input
          aria-labelledby={`${id}-name`}
          aria-describedby={why ? `${id}-why` : undefined}
          aria-invalid={why !== null}
          className="num rate-own"
          inputMode="decimal"
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={enter}
          onKeyDown={keys}
        />
      </td>
      <td>
        <input
          aria-label={`Reason for ${note}`}
          value={reason}
          onChange={(event) => setReason(event.target.value)}
          onBlur={enter}
          onKeyDown={keys}
        />
        {why && (
          <p className="field-why" id={`${id}-why`} role="alert">
            {why}
          </p>
        )}
      </td>
    </tr>
  );
}
