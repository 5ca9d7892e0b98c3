import { angleRuleOf, angleRules, live, readRecord, SETTINGS_ID, settingsOf } from '../../../book/index.ts';
import { useActions } from '../../desk-context.ts';
import { LedgerField } from '../LedgerField.tsx';
import { TableLedger } from '../TableLedger.tsx';
import type { LeafProps } from './leaf-props.ts';
import { RateLedger } from './RateLedger.tsx';

/** What the whole book goes by: district, angle rule, review, belay, and every rate with its source and bounds. */
export function RulesLeaf({ book }: LeafProps) {
  const { desk } = useActions();
  const settings = settingsOf(book) ?? readRecord('settings', { id: SETTINGS_ID }, 'The settings');
  const own = live(book, 'angleRules');
  const rule = angleRuleOf(book);
  const choose = (value: string): void => {
    const [kind, name] = [value.slice(0, 4), value.slice(4)];
    const set = kind === 'own:' ? { angleRuleId: name } : { angleRuleId: null, angleRuleName: name };
    void desk.edit('Angle rule', [{ table: 'settings', id: SETTINGS_ID, set }]);
  };
  const chosen = own.some(({ id }) => id === settings.angleRuleId) ? `own:${settings.angleRuleId}` : `the:${rule.name}`;
  const field = (
    name: string,
    label: string,
    kind: 'line' | 'notes' | 'number' | 'flag' | 'choice',
    options?: string[],
  ) => (
    <LedgerField
      table="settings"
      record={settings}
      column={{ field: name, label, kind, ...(options && { options }) }}
    />
  );
  return (
    <>
      <div className="leaf-columns">
        <div className="ledger-row">
          {field('district', 'District', 'line')}
          {field('invented', 'Made up, for trying out', 'flag')}
          {field('units', 'Units of the book', 'choice', ['us', 'metric'])}
          {field('reviewMonths', 'Months between field checks', 'number')}
          {field('fullBelay', 'Belay for the full weight everywhere', 'flag')}
          {field('procedures', 'Department’s procedures', 'notes')}
          <LedgerField
            table="settings"
            record={settings}
            column={{
              field: 'publishedAddress',
              label: 'Where the book is published',
              kind: 'line',
              empty: true,
              hint: 'https://…, nowhere yet',
            }}
          />
        </div>
        <section>
          <h3>Angle rule</h3>
          <p>
            <label className="field">
              <span>Low under, high from, degrees</span>
              <select value={chosen} onChange={(event) => choose(event.target.value)}>
                {angleRules.map(({ name, source }) => (
                  <option key={name} value={`the:${name}`}>
                    {name}, {source === 'practice' ? 'common practice, no source' : source}
                  </option>
                ))}
                {own.map(({ id, name, limits }) => (
                  <option key={id} value={`own:${id}`}>
                    {name}, {limits.lowMaxDeg}/{limits.highMinDeg}, the book’s own
                  </option>
                ))}
              </select>
            </label>
          </p>
          <h3>Rules of our own</h3>
          <TableLedger table="angleRules" records={own} what="a rule" />
        </section>
      </div>
      <RateLedger book={book} />
    </>
  );
}
