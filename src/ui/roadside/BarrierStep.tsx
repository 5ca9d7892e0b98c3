import { useState } from 'react';
import { useActions } from '../desk-context.ts';
import { edgeLine } from './edge-shapes.ts';
import { Choices, Keys } from './Keys.tsx';
import type { StepProps } from './step-props.ts';

/** A marked barrier reaches so far to either side of the site, metres; it can be drawn anew on the survey's map. */
const HALF_M = 15;
const choices = ['none', 'rail', 'wall or parapet'] as const;

/** A barrier moves the usable edge inward: marked at once. That there is none takes no mark away. */
export function BarrierStep({ site, study, onDone, onCannot }: StepProps) {
  const { desk } = useActions();
  const [chosen, setChosen] = useState<string | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const marked = study?.marks.some(({ kind }) => kind === 'barrier') ?? false;
  const keep = async (): Promise<void> => {
    if (chosen === 'none' || marked || !study) return onDone(chosen === 'none' ? 'none seen' : `${chosen} seen`);
    const line = edgeLine(study, HALF_M);
    if (line.length < 2) return onDone(`${chosen} seen, not marked: the edge was not found`);
    const set = { siteId: site.id, kind: 'barrier', name: chosen, geometry: { type: 'LineString', coordinates: line } };
    const id = `mark-${crypto.randomUUID().slice(0, 18)}`;
    if (await desk.edit(`Mark the barrier of ${site.name}`, [{ table: 'marks', id, set }])) onDone(`${chosen}, marked`);
    else setWhy('Not saved; try again.');
  };
  return (
    <>
      <Choices legend="Along the edge stands" {...{ choices, chosen }} onChoose={setChosen} />
      <Keys
        main={chosen ? `keep: ${chosen}` : 'choose one'}
        disabled={!chosen}
        onKeep={() => void keep()}
        onCannot={onCannot}
      />
      <p className="check-rule">
        {why ??
          (marked && chosen === 'none'
            ? 'One is marked on the map: it counts until somebody takes the mark away on the survey screen.'
            : 'A barrier is marked along the edge at once; its inside face is then the usable edge. It is never an anchor.')}
      </p>
    </>
  );
}
