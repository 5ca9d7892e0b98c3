import { useActions } from '../desk-context.ts';
import { useGiven } from '../state/index.ts';

const names = ['wet', 'ice', 'night', 'wind'] as const;

/** Conditions of the day; each may make the study worse, never better. */
export function ConditionSwitch() {
  const { desk } = useActions();
  const conditions = useGiven((state) => state.conditions);
  return (
    <fieldset className="words-switch conditions">
      <legend>Conditions</legend>
      {names.map((name) => (
        <label key={name} className={conditions[name] ? 'is-on' : undefined}>
          <input
            type="checkbox"
            checked={conditions[name]}
            onChange={(event) => desk.setCondition(name, event.target.checked)}
          />
          {name}
        </label>
      ))}
    </fieldset>
  );
}
