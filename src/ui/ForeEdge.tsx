import { useDesk } from './desk-state.ts';

/** The screens as cuts in the page's fore-edge; the one on the desk is cut open. */
export function ForeEdge() {
  const screen = useDesk((state) => state.place.screen);
  return (
    <nav className="fore-edge" aria-label="Screens">
      <a href="#/" aria-current={screen === 'open' ? undefined : 'page'}>
        <span>Study</span>
      </a>
      <a href="#/open" aria-current={screen === 'open' ? 'page' : undefined}>
        <span>Own files</span>
      </a>
    </nav>
  );
}
