import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { studyRows } from './study-rows.ts';

/** The numbers that decide something, each in the ink of its origin and with its rule. */
export function NumbersBlock({ study, units }: { readonly study: Study; readonly units: UnitSystem }) {
  const rows = studyRows(study, units);
  if (rows.length === 0) return null;
  return (
    <section className="block" aria-labelledby="numbers-head">
      <div className="block-head">
        <h2 id="numbers-head">Read from the ground</h2>
        <span className="note">nothing measured in the field yet</span>
      </div>
      <table className="numbers">
        <thead className="unseen">
          <tr>
            <th>What</th>
            <th>How much</th>
            <th>Range or rule</th>
            <th>Origin</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.label} ${row.more}`} title={row.rule ?? undefined}>
              <th scope="row">{row.label}</th>
              <td className={`num ${row.how}`}>{row.value}</td>
              <td className="note">{row.more}</td>
              <td className="note origin">{row.how}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
