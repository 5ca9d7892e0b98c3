import { recordedMarkKinds } from '../../../book/index.ts';
import { formatDecimalDegrees } from '../../../geo/index.ts';
import type { PreviewItem } from '../../../io/index.ts';
import type { TakenAs } from '../bring-in.ts';

/** One place of a file: whether it is added, and as what where the file does not say. */
export function PlaceRow({ item, ticked, as, onTick, onTakeAs }: Props) {
  const { name, ready, question, where } = item;
  return (
    <li className="found-row">
      <label className="tick">
        <input type="checkbox" checked={ticked} onChange={(event) => onTick(event.target.checked)} />
        <span>
          {name} <span className="note">{itemWords(item, as)}</span>
        </span>
      </label>
      {ready === null && <TakenAsChoice label={`What ${name || where} is`} value={as} onChoose={onTakeAs} />}
      {question && <p className="field-why">{question.sentence}</p>}
    </li>
  );
}

/** Site or kind of mark, said by a person. */
export function TakenAsChoice({ label, value, onChoose }: ChoiceProps) {
  return (
    <label className="field taken-as">
      <span>{label}</span>
      <select value={value ?? ''} onChange={(event) => onChoose(event.target.value as TakenAs)}>
        {value === null && <option value="">choose</option>}
        {(['site', ...recordedMarkKinds] as const).map((kind) => (
          <option key={kind} value={kind}>
            {kind}
          </option>
        ))}
      </select>
    </label>
  );
}

function itemWords({ ready, kind, geometry, exists }: PreviewItem, as: TakenAs | null): string {
  const [lon, lat] = geometry.type === 'Point' ? geometry.coordinates : [];
  const at = lon === undefined ? geometry.type : formatDecimalDegrees({ lon, lat: lat! });
  const what = ready ? (kind ?? ready.table) : as === 'site' ? 'a site; its side is asked of the ground' : 'a mark';
  return `${what}, ${at}${exists ? ', already in the book' : ''}`;
}

interface ChoiceProps {
  readonly label: string;
  readonly value: TakenAs | null;
  onChoose(as: TakenAs): void;
}

interface Props {
  readonly item: PreviewItem;
  readonly ticked: boolean;
  readonly as: TakenAs | null;
  onTick(on: boolean): void;
  onTakeAs(as: TakenAs): void;
}
