import type { CrashPreview } from '../../../io/index.ts';
import { changesOf } from '../../../io/index.ts';
import { useActions } from '../../desk-context.ts';

/** What a table of crash records would add: day, place, severity. */
export function CrashesFound({ name, preview, onEnd }: Props) {
  const { desk } = useActions();
  const { crashes, outside, skipped, remarks } = preview;
  const add = async (): Promise<void> => {
    if (await desk.edit(`Bring in crash records of ${name}`, changesOf('crashes', crashes)))
      onEnd(`${crashes.length} crash records added from ${name}. They leave the book only when asked for.`);
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
      {outside.length > 0 && <p className="note">{outside.length} lie outside the district and are left out.</p>}
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
        <button type="button" className="key" disabled={crashes.length === 0} onClick={() => void add()}>
          Add {crashes.length}
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
