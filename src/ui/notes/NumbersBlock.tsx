import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { Figure, whyOrigin } from '../study/index.ts';
import { studyRows } from './study-rows.ts';

/** The numbers that decide something, each in the ink of its origin; each answers why. */
export function NumbersBlock({ study, units }: { readonly study: Study; readonly units: UnitSystem }) {
  const rows = studyRows(study, units);
  if (rows.length === 0) return null;
  return (
    <section className="block" aria-labelledby="numbers-head">
      <div className="block-head">
        <h2 id="numbers-head">Read from the ground</h2>
        <span className="note">tap a number for its reason</span>
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
          {rows.map((row, i) => (
            <tr key={`${row.label} ${row.more}`}>
              <th scope="row">{row.label}</th>
              <td>
                <Figure
                  why={{
                    ...whyOrigin(study, row.path, `${row.label.toLowerCase()} ${row.value}`, [row.more]),
                    key: `row ${i}`,
                  }}
                  ink={row.how}
                >
                  {row.value}
                </Figure>
              </td>
              <td className="note">{row.more}</td>
              <td className="note origin">{row.how}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
