/** @jsxImportSource preact */
import { keptWeathers } from '../../../io/offline/index.ts';
import { useCall, useCallState } from './use-call.ts';

/** Dry, wet or ice, each with what the anchors hold then; night and wind beside them. Every change works the site out anew. */
export function ConditionSwitch() {
  const call = useCall();
  const { circumstances, holds, place } = useCallState();
  return (
    <div class="conditions">
      <fieldset class="weathers">
        <legend class="heard">Weather</legend>
        {keptWeathers.map((weather) => {
          const on = circumstances.weather === weather;
          return (
            <label key={weather} class={on ? 'on' : ''}>
              <input type="radio" name="weather" class="cover" checked={on} onChange={() => call.setWeather(weather)} />
              {weather}
              {place.kind === 'site' || on ? <small>{holds[weather]?.text ?? '…'}</small> : null}
            </label>
          );
        })}
      </fieldset>
      <div class="also">
        {(['night', 'wind'] as const).map((what) => (
          <button key={what} type="button" aria-pressed={circumstances[what]} onClick={() => call.toggle(what)}>
            {what}
          </button>
        ))}
      </div>
    </div>
  );
}
