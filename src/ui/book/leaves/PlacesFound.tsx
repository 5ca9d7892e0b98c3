import { useState } from 'react';
import type { Preview, PreviewItem } from '../../../io/index.ts';
import { askOf } from '../../actions/question.ts';
import { useActions } from '../../desk-context.ts';
import { type AskSide, changesOfItems, firstTakenAs, plainItem, previewWords, type TakenAs } from '../bring-in.ts';
import type { LeafProps } from './leaf-props.ts';
import { PlaceRow, TakenAsChoice } from './PlaceRow.tsx';

/** What a file of places would add, ticked one by one. */
export function PlacesFound({ name, preview, onEnd }: Props) {
  const { desk, workers } = useActions();
  const { format, items, skipped, remarks } = preview;
  const [ticked, setTicked] = useState<ReadonlySet<PreviewItem>>(new Set(items.filter(plainItem)));
  const [left, setLeft] = useState<readonly { where: string; why: string }[]>([]);
  const [working, setWorking] = useState(false);
  const [taken, setTaken] = useState<ReadonlyMap<PreviewItem, TakenAs>>(new Map());
  const open = items.filter(({ ready }) => ready === null);
  const takenAs = (item: PreviewItem): TakenAs | null => taken.get(item) ?? firstTakenAs(item);
  const ask: AskSide = async ({ geometry }) => {
    const [lon, lat] = geometry.type === 'Point' ? geometry.coordinates : [];
    const question = {
      at: { lon: lon!, lat: lat! },
      side: 'of the point',
      patient: null,
      patients: 1,
      pins: {},
    } as const;
    const { study } = await workers.study.call('study', askOf(question));
    return { sideAzimuthDeg: study.site.sideAzimuthDeg % 360, roadName: study.site.road.name };
  };
  const add = async (): Promise<void> => {
    setWorking(true);
    const { changes, left: out } = await changesOfItems(
      items.filter((item) => ticked.has(item)),
      name,
      ask,
      takenAs,
    );
    setWorking(false);
    setLeft(out);
    if (changes.length === 0 && out.length > 0) return;
    if (!(await desk.edit(`Bring in ${name}`, changes))) return;
    const not =
      out.length === 0 ? '' : ` ${out.length} not added: ${out.map(({ where, why }) => `${where}: ${why}`).join(' ')}`;
    onEnd(`${changes.length} added from ${name}.${not} Undo takes them back together.`);
  };
  const turn = (item: PreviewItem, on: boolean): void => {
    const next = new Set(ticked);
    if (on) next.add(item);
    else next.delete(item);
    setTicked(next);
  };
  return (
    <section aria-label={`What ${name} would add`}>
      <h3>
        {name}, {format}: {previewWords(preview)}
      </h3>
      {remarks.map((remark) => (
        <p key={remark} className="note">
          {remark}
        </p>
      ))}
      {open.length > 1 && (
        <TakenAsChoice
          label={`All ${open.length} whose kind the file does not say are`}
          value={null}
          onChoose={(as) => setTaken(new Map(open.map((item) => [item, as])))}
        />
      )}
      <ul className="ledger" aria-label="Places of the file">
        {items.slice(0, 500).map((item) => (
          <PlaceRow
            key={item.where}
            item={item}
            ticked={ticked.has(item)}
            as={takenAs(item)}
            onTick={(on) => turn(item, on)}
            onTakeAs={(as) => setTaken(new Map(taken).set(item, as))}
          />
        ))}
      </ul>
      {items.length > 500 && <p className="note">{items.length - 500} more are ticked like these.</p>}
      {skipped.length > 0 && (
        <details>
          <summary>{skipped.length} not usable</summary>
          <ul>
            {skipped.slice(0, 200).map(({ where, why }) => (
              <li key={where + why}>
                {where}: {why}
              </li>
            ))}
          </ul>
        </details>
      )}
      {left.map(({ where, why }) => (
        <p key={where} className="field-why">
          {where}: {why}
        </p>
      ))}
      <div className="form-keys">
        <button type="button" className="key" disabled={ticked.size === 0 || working} onClick={() => void add()}>
          {working ? 'asking the ground' : `Add ${ticked.size}`}
        </button>
        <button type="button" className="key-quiet" onClick={() => onEnd(null)}>
          add nothing
        </button>
      </div>
    </section>
  );
}

interface Props extends LeafProps {
  readonly name: string;
  readonly preview: Preview;
  /** With what was done, or null for nothing. */
  onEnd(words: string | null): void;
}
