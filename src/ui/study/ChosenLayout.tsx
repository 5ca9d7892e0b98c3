import type { Study, StudyLayout } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';
import { Figure } from './Figure.tsx';
import { forceFigure, forceWords, ropeFits } from './layout-words.ts';
import { PinRows } from './PinRows.tsx';
import { whyForce, whyReason } from './why.ts';

/** The chosen layout: who is what, forces against what holds, rope against kits. */
export function ChosenLayout({ study, layout, units, high }: Props) {
  const { ropeM, fits, forces, stages } = layout;
  const ropes = [
    ['main', ropeM.main, 'main line'],
    ['belay', ropeM.belay, 'belay line'],
    ['haul', ropeM.haul, 'haul line'],
  ] as const;
  return (
    <div className="chosen-layout">
      <PinRows study={study} layout={layout} units={units} />
      <table className="numbers forces">
        <caption className="unseen">Forces of the chosen layout</caption>
        <tbody>
          {forces.map((force, i) => {
            const key = `${layout.id} force ${i}`;
            return (
              <tr key={key} className={force.ok === 'no' ? 'unmet' : undefined}>
                <th scope="row">{force.at}</th>
                <td>
                  <Figure why={whyForce(force, key)}>{forceFigure(force, units)}</Figure>
                </td>
                <td className="note">{forceWords(force)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <table className="numbers ropes">
        <caption className="unseen">Rope needed, and whose kit reaches</caption>
        <tbody>
          {ropes.map(
            ([name, metres, quantity]) =>
              metres !== null && (
                <tr key={name}>
                  <th scope="row">{name} rope</th>
                  <td>
                    <Figure why={whyReason(layout, `${layout.id} rope ${name}`, `${name} rope`, quantity)}>
                      {formatLength(metres, units, 'up')}
                    </Figure>
                  </td>
                  <td className="note">{shortWords(layout, name, units, high)}</td>
                </tr>
              ),
          )}
        </tbody>
      </table>
      <p className="note">
        Rope by kit:{' '}
        {ropeFits(layout)
          .map(([tier, words]) => `${tier} ${words}`)
          .join(', ')}
        .{fits.short.length === 0 && ' '}
        {stages?.map(({ count, at }) => ` In ${count} stages: ${at.map(({ what }) => what).join(', ')}.`)}
      </p>
    </div>
  );
}

interface Props {
  readonly study: Study;
  readonly layout: StudyLayout;
  readonly units: UnitSystem;
  readonly high: boolean;
}

/** Where the first-arriving kit is short: by how much, and who brings it. */
function shortWords({ fits }: StudyLayout, line: string, units: UnitSystem, high: boolean): string {
  const short = fits.short.find((one) => one.line === line);
  if (!short) return 'at hand';
  const by = `first kit ${formatLength(short.byM, units, 'up')} short`;
  if (short.unit === null) return `${by}, nobody listed brings it`;
  return high || short.atMin === null
    ? `${by}, ${short.unit} brings it`
    : `${by}, ${short.unit} brings it at ${Math.round(short.atMin)} min`;
}
