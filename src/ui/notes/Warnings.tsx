import type { StudyWarning } from '../../study/index.ts';

/** What to stop for and check, gravest first, each with its word; what is but to be known runs on under one word, all of it in sight. */
export function Warnings({ warnings }: { readonly warnings: readonly StudyWarning[] }) {
  if (warnings.length === 0) return null;
  const notes = warnings.filter(({ severity }) => severity === 'note');
  return (
    <section className="block" aria-label="Warnings">
      <dl className="warnings">
        {warnings
          .filter(({ severity }) => severity !== 'note')
          .map(({ code, severity, text }) => (
            <div key={`${code} ${text}`} className={`warning ${severity}`}>
              <dt>{severity}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        {notes.length > 0 && (
          <div className="warning note">
            <dt>{notes.length === 1 ? 'note' : 'notes'}</dt>
            <dd>
              {notes.map(({ code, text }) => (
                <span key={`${code} ${text}`}>{text} </span>
              ))}
            </dd>
          </div>
        )}
      </dl>
    </section>
  );
}
