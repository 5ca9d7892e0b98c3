import type { StudyWarning } from '../../study/index.ts';

/** What to stop for, check and note, gravest first, each with its word. */
export function Warnings({ warnings }: { readonly warnings: readonly StudyWarning[] }) {
  if (warnings.length === 0) return null;
  return (
    <section className="block" aria-label="Warnings">
      <dl className="warnings">
        {warnings.map(({ code, severity, text }) => (
          <div key={`${code} ${text}`} className={`warning ${severity}`}>
            <dt>{severity}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
