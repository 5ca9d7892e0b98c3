import { type FormEvent, useState } from 'react';
import { useActions } from '../desk-context.ts';
import type { TakenRow } from './taken-rows.ts';

/** Two readings are gentler than the computed value: somebody must say with name and reason that they are to be taken. */
export function CorrectionForm({ row, siteId }: { readonly row: TakenRow; readonly siteId: string }) {
  const { desk } = useActions();
  const [problem, setProblem] = useState<string | null>(null);
  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const by = String(data.get('by')).trim();
    const reason = String(data.get('reason')).trim();
    if (by === '' || reason === '') {
      setProblem('A gentler value needs a name and a reason.');
      return;
    }
    desk.readings.correct(siteId, {
      quantity: row.quantity,
      measurementIds: row.readings.map(({ id }) => id),
      computed: row.computed,
      by,
      on: new Date().toISOString().slice(0, 10),
      reason,
    });
  };
  return (
    <form className="reading-form" onSubmit={onSubmit} aria-label={`Take the readings: ${row.label}`}>
      <p className="note">The readings are gentler than the computed value. To take them, say who and why.</p>
      <label className="field">
        <span>Name</span>
        <input name="by" autoComplete="name" />
      </label>
      <label className="field">
        <span>Reason</span>
        <input name="reason" />
      </label>
      {problem && (
        <p className="form-problem" role="alert">
          {problem}
        </p>
      )}
      <button type="submit" className="key">
        Take them
      </button>
    </form>
  );
}
