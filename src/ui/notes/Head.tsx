import { useActions } from '../desk-context.ts';
import { useDesk } from '../desk-state.ts';

/** The top line of the notes: whose district, units, light, own files. */
export function Head({ light }: { readonly light: 'day' | 'night' }) {
  const { desk } = useActions();
  const district = useDesk((state) => state.district);
  const units = useDesk((state) => state.units);
  const other = light === 'night' ? 'day' : 'night';
  return (
    <div className="head">
      <p className="head-name">
        <a href="#/" title="All sites">
          <i>{district?.name ?? 'Brinkbook'}</i>
        </a>
        {district?.invented && ', an invented demo district'}
      </p>
      <fieldset className="words-switch">
        <legend className="unseen">Units and light</legend>
        <button type="button" aria-pressed={units === 'us'} onClick={() => desk.setUnits('us')}>
          feet
        </button>
        <button type="button" aria-pressed={units === 'metric'} onClick={() => desk.setUnits('metric')}>
          metres
        </button>
        <button type="button" onClick={() => desk.setLight(other)}>
          {other}
        </button>
        <a href="#/open">own files</a>
      </fieldset>
    </div>
  );
}
