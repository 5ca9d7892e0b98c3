import { type ScreenName, writeAddress } from './address.ts';
import { useActions } from './desk-context.ts';
import { usePlace } from './state/index.ts';

const names: readonly (readonly [ScreenName, string])[] = [
  ['survey', 'Survey'],
  ['study', 'Study'],
  ['check', 'Check'],
  ['book', 'Book'],
  ['open', 'Own files'],
];

/** The screens as cuts in the page's fore-edge; the one on the desk is cut open. */
export function ForeEdge() {
  const { desk } = useActions();
  const place = usePlace();
  const { subject } = place;
  return (
    <nav className="fore-edge" aria-label="Screens">
      {names.map(([screen, words]) => {
        const closed = (screen === 'study' && !subject) || (screen === 'check' && subject?.kind !== 'site');
        return closed ? (
          <span key={screen} className="cut-closed" title="Pick a site first">
            <span>{words}</span>
          </span>
        ) : (
          <a
            key={screen}
            href={writeAddress({ ...place, screen })}
            aria-current={place.screen === screen ? 'page' : undefined}
            onClick={(event) => {
              event.preventDefault();
              desk.goTo(screen);
            }}
          >
            <span>{words}</span>
          </a>
        );
      })}
    </nav>
  );
}
