import { useState } from 'react';
import { useActions } from '../desk-context.ts';
import { useEditor } from '../state/index.ts';
import { shoulderRing } from './edge-shapes.ts';
import { Choices, Keys } from './Keys.tsx';
import type { StepProps } from './step-props.ts';

/** The ground marked, metres along the road to either side of the site. */
const HALF_M = 12;
const choices = ['firm', 'soft or wet', 'not tried'] as const;

/** Soft ground is marked at once. Firm ground betters the result: it is tried at two wheels, with a name and a reason. */
export function GroundStep({ site, study, today, onDone, onCannot }: StepProps) {
  const { desk } = useActions();
  const [chosen, setChosen] = useState<string | null>(null);
  const [tried, setTried] = useState(0);
  const [name, setName] = useState(useEditor.getState().who);
  const [reason, setReason] = useState('');
  const [why, setWhy] = useState<string | null>(null);
  const mark = async (kind: 'firm ground' | 'soft ground', notes: string): Promise<void> => {
    const ring = study && shoulderRing(study, HALF_M);
    if (!ring) return onDone(`${kind}, not marked: the edge was not found`);
    const set = { siteId: site.id, kind, name: null, geometry: { type: 'Polygon', coordinates: [ring] }, notes };
    const id = `mark-${crypto.randomUUID().slice(0, 18)}`;
    if (await desk.edit(`Mark ${kind} of ${site.name}`, [{ table: 'marks', id, set }])) onDone(`${kind}, marked`);
    else setWhy('Not saved; try again.');
  };
  const keep = (): void => {
    if (chosen === 'not tried') onDone('not tried');
    else if (chosen === 'soft or wet') void mark('soft ground', `Seen at the roadside, ${today}.`);
    else if (tried < 1) setTried(1);
    else if (name.trim() === '' || reason.trim() === '') setWhy('Firm ground needs a name and a reason.');
    else void mark('firm ground', `Tried at two places by ${name.trim()}, ${today}: ${reason.trim()}`);
  };
  const second = chosen === 'firm' && tried >= 1;
  return (
    <>
      <Choices
        legend="Shoulder and turnout, under a wheel"
        {...{ choices, chosen }}
        onChoose={(words) => {
          setChosen(words);
          setTried(0);
          setWhy(null);
        }}
      />
      {second && (
        <div className="field-pair">
          <label className="field">
            <span>Name</span>
            <input value={name} onChange={(event) => setName(event.target.value)} autoComplete="name" />
          </label>
          <label className="field">
            <span>Reason, such as “engine stood here”</span>
            <input value={reason} onChange={(event) => setReason(event.target.value)} />
          </label>
        </div>
      )}
      <Keys
        main={chosen ? `keep: ${chosen}` : 'choose one'}
        small={chosen === 'firm' ? (second ? 'tried at the second wheel' : '1 of 2: tried at one wheel') : undefined}
        disabled={!chosen}
        onKeep={keep}
        onCannot={onCannot}
      />
      <p className="check-rule">{why ?? 'Soft counts at once. Firm counts after two tries, a name and a reason.'}</p>
    </>
  );
}
