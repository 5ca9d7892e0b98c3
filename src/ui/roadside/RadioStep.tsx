import { useState } from 'react';
import { useActions } from '../desk-context.ts';
import { Choices, Keys } from './Keys.tsx';
import type { StepProps } from './step-props.ts';

const choices = ['works here and below', 'works here, not below', 'dead here'] as const;

/** Who is heard from the edge; where nobody is, a dead spot is marked at once. */
export function RadioStep({ site, onDone, onCannot }: StepProps) {
  const { desk } = useActions();
  const [chosen, setChosen] = useState<string | null>(null);
  const [channel, setChannel] = useState(site.radio ?? '');
  const [why, setWhy] = useState<string | null>(null);
  const keep = async (): Promise<void> => {
    const { lon, lat } = site.place;
    const words = [channel.trim(), chosen].filter(Boolean).join(', ').slice(0, 200);
    const geometry = { type: 'Point', coordinates: [lon, lat] };
    const set = { siteId: site.id, kind: 'radio dead spot', name: null, geometry };
    const dead =
      chosen === 'works here and below'
        ? []
        : [{ table: 'marks' as const, id: `mark-${crypto.randomUUID().slice(0, 18)}`, set }];
    const done = await desk.edit(`Radio of ${site.name}`, [
      { table: 'sites', id: site.id, set: { radio: words } },
      ...dead,
    ]);
    if (done) onDone(words);
    else setWhy('Not saved; try again.');
  };
  return (
    <>
      <Choices legend="The radio" {...{ choices, chosen }} onChoose={setChosen} />
      <label className="field">
        <span>Channel</span>
        <input value={channel} maxLength={120} onChange={(event) => setChannel(event.target.value)} />
      </label>
      <Keys
        main={chosen ? 'keep it' : 'choose one'}
        disabled={!chosen}
        onKeep={() => void keep()}
        onCannot={onCannot}
      />
      <p className="check-rule">{why ?? 'Try it from the edge and, where somebody can go, from below.'}</p>
    </>
  );
}
