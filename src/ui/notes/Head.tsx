import { writeAddress } from '../address.ts';
import { useActions } from '../desk-context.ts';
import { useDistrict, useGiven, usePlace, useReading } from '../state/index.ts';
import { AlongRoad } from './AlongRoad.tsx';
import { districtWords } from './district-words.ts';
import { Kept } from './Kept.tsx';

/** The top line of the notes: whose district, whether the book is kept, units, light, what stands beside a studied site. */
export function Head({ light }: { readonly light: 'day' | 'night' }) {
  const { desk } = useActions();
  const { name, invented } = districtWords(useDistrict(), useGiven());
  const units = useReading((state) => state.units);
  const screen = usePlace((state) => state.screen);
  const other = light === 'night' ? 'day' : 'night';
  return (
    <div className="head">
      <p className="head-name">
        <a href="#/survey" title="All sites">
          <i>{name}</i>
        </a>
        {invented && (
          <>
            , <span className="head-wide">an </span>invented<span className="head-wide"> {invented}</span>
          </>
        )}
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
      </fieldset>
      <Kept />
      {screen === 'study' && <AlongRoad />}
      <ScreenWords />
    </div>
  );
}

/** On a phone the fore-edge is out of reach: its words stand here. */
function ScreenWords() {
  const place = usePlace();
  return (
    <nav className="screen-words" aria-label="Screens, in the drawer">
      {(['survey', 'study', 'check', 'book', 'open'] as const).map((screen) =>
        screen === 'study' && !place.subject ? null : (
          <a
            key={screen}
            href={writeAddress({ ...place, screen })}
            aria-current={place.screen === screen ? 'page' : undefined}
          >
            {screen === 'open' ? 'own files' : screen}
          </a>
        ),
      )}
    </nav>
  );
}
