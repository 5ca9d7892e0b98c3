import { useState } from 'react';
import { formatDecimalDegrees } from '../../../geo/index.ts';
import type { Preview, PreviewItem } from '../../../io/index.ts';
import { askOf } from '../../actions/question.ts';
import { useActions } from '../../desk-context.ts';
import { type AskSide, changesOfItems, plainItem, previewWords } from '../bring-in.ts';
import type { LeafProps } from './leaf-props.ts';

/** What a file of places would add, ticked one by one. */
export function PlacesFound({ name, preview, onEnd }: Props) {
  const { desk, workers } = useActions();
  const { format, items, skipped, remarks } = preview;
  const [ticked, setTicked] = useState<ReadonlySet<PreviewItem>>(new Set(items.filter(plainItem)));
  const [left, setLeft] = useState<readonly { where: string; why: string }[]>([]);
  const [working, setWorking] = useState(false);
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
      <ul className="ledger" aria-label="Places of the file">
        {items.slice(0, 500).map((item) => (
          <li key={item.where} className="found-row">
            <label className="tick">
              <input
                type="checkbox"
                checked={ticked.has(item)}
                onChange={(event) => turn(item, event.target.checked)}
              />
              <span>
                {item.name} <span className="note">{itemWords(item)}</span>
              </span>
            </label>
            {item.question && <p className="field-why">{item.question.sentence}</p>}
          </li>
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

function itemWords({ ready, wants, kind, geometry, exists }: PreviewItem): string {
  const [lon, lat] = geometry.type === 'Point' ? geometry.coordinates : [];
  const at = lon === undefined ? geometry.type : formatDecimalDegrees({ lon, lat: lat! });
  const as = ready ? (kind ?? ready.table) : wants === 'side' ? 'a site; its side is asked of the ground' : 'a mark';
  return `${as}, ${at}${exists ? ', already in the book' : ''}`;
}

interface Props extends LeafProps {
  readonly name: string;
  readonly preview: Preview;
  /** With what was done, or null for nothing. */
  onEnd(words: string | null): void;
}
