import { type FormEvent, useState } from 'react';
import { checkMethods } from '../../book/index.ts';
import { useActions } from '../desk-context.ts';
import { setEditor, useEditor } from '../state/index.ts';
import { endCheck } from './check-draft.ts';
import type { StepProps } from './step-props.ts';
import { type Answers, missed, notesOf } from './steps.ts';

/** Somebody stands for the site as the book has it: who, role, day, how, and what could hide something. */
export function SignStep({ site, today, answers }: StepProps & { readonly answers: Answers }) {
  const { desk } = useActions();
  const { who, device } = useEditor();
  const [why, setWhy] = useState<string | null>(null);
  const left = missed(answers);
  const onSubmit = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const text = (name: string): string => String(data.get(name) ?? '').trim();
    const by = text('by');
    if (by === '') {
      setWhy('Say who signs.');
      return;
    }
    const set = {
      siteId: site.id,
      by,
      role: text('role') || null,
      on: text('on'),
      method: text('method'),
      conditions: text('conditions') || null,
      notes: notesOf(answers),
    };
    const id = `signoff-${crypto.randomUUID().slice(0, 18)}`;
    if (!(await desk.edit(`Sign off ${site.name}`, [{ table: 'signOffs', id, set }]))) {
      setWhy('Not saved; what you typed is still here. Try again.');
      return;
    }
    if (who === 'this desk') setEditor({ who: by, device });
    endCheck(site.id);
    desk.goTo('study');
  };
  return (
    <form className="sign-form" aria-label="Sign off" onSubmit={(event) => void onSubmit(event)}>
      <div className="field-pair">
        <label className="field">
          <span>Name</span>
          <input name="by" defaultValue={who === 'this desk' ? '' : who} autoComplete="name" maxLength={200} />
        </label>
        <label className="field">
          <span>Role</span>
          <input name="role" maxLength={200} />
        </label>
        <label className="field">
          <span>How</span>
          <select name="method" defaultValue="walked">
            {checkMethods.map((method) => (
              <option key={method}>{method}</option>
            ))}
          </select>
        </label>
        <label className="field">
          <span>On</span>
          <input name="on" type="date" defaultValue={today} required />
        </label>
      </div>
      <label className="field">
        <span>Conditions: weather, light, snow, growth</span>
        <input name="conditions" maxLength={200} />
      </label>
      {left.length > 0 && <p className="check-rule">As computed, not looked at: {left.join(', ')}.</p>}
      {why && (
        <p className="field-why" role="alert">
          {why}
        </p>
      )}
      <button type="submit" className="keep keep-whole">
        sign off
      </button>
    </form>
  );
}
