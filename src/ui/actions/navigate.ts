import { type MapView, type Place, readAddress, type Subject, sameSubject, writeAddress } from '../address.ts';
import { usePlace, useSketch } from '../state/index.ts';

/** Keeps the place and the address bar in step. */
export interface Navigate {
  /** Goes somewhere: a new entry in the history, or the same one put right. What is not named stays. */
  go(to: Partial<Place>, how?: 'push' | 'replace'): void;
  /** Reads the address bar: whether the subject changed, and the map's view where it names one. One that it does not name stays. */
  follow(): { readonly subjectChanged: boolean; readonly view: MapView | null };
}

export function createNavigate(): Navigate {
  const leave = (next: Subject | null): boolean => {
    if (sameSubject(usePlace.getState().subject, next)) return false;
    useSketch.setState({ layoutId: null, why: null, hairM: null });
    return true;
  };
  return {
    go(to, how = 'push') {
      const place = { ...usePlace.getState(), ...to };
      leave(place.subject);
      usePlace.setState(place, true);
      const hash = writeAddress(place);
      if (location.hash === hash) return;
      if (how === 'push') history.pushState(null, '', hash);
      else history.replaceState(null, '', hash);
    },
    follow() {
      const place = readAddress(location.hash);
      const { view } = place;
      const subjectChanged = leave(place.subject);
      usePlace.setState({ ...place, view: view ?? usePlace.getState().view }, true);
      return { subjectChanged, view };
    },
  };
}
