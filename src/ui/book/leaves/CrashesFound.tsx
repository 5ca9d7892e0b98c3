import { useState } from 'react';
import type { CrashPreview } from '../../../io/index.ts';
import { changesOf } from '../../../io/index.ts';
import { useActions } from '../../desk-context.ts';

/** What a table of crash records would add: day, place, severity. */
export function CrashesFound({ name, preview, onEnd }: Props) {
  const { desk } = useActions();
  const { crashes, outside, skipped, remarks } = preview;
  const [withOutside, setWithOutside] = useState(false);
  const chosen = withOutside ? [...crashes, ...outside.map(({ crash }) => crash)] : crashes;
  const add = async (): Promise<void> => {
    if (await desk.edit(`Bring in crash records of ${name}`, changesOf('crashes', chosen)))
      onEnd(`${chosen.length} crash records added from ${name}. They leave the book only when asked for.`);
  };
  return (
    <section aria-label={`What ${name} would add`}>
      <h3>
        {name}: {crashes.length} crash records
      </h3>
      {remarks.map((remark) => (
        <p key={remark} className="note">
          {remark}
        </p>
      ))}
      {outside.length > 0 && (
        <label className="tick">
          <input type="checkbox" checked={withOutside} onChange={(event) => setWithOutside(event.target.checked)} /> add
          the {outside.length} outside the district, too
        </label>
      )}
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
      <div className="form-keys">
        <button type="button" className="key" disabled={chosen.length === 0} onClick={() => void add()}>
          Add {chosen.length}
        </button>
        <button type="button" className="key-quiet" onClick={() => onEnd(null)}>
          add nothing
        </button>
      </div>
    </section>
  );
}

interface Props {
  readonly name: string;
  readonly preview: CrashPreview;
  onEnd(words: string | null): void;
}
