import type { ReactNode } from 'react';
import { useActions } from '../desk-context.ts';
import { useBook, useDistrict, usePlace } from '../state/index.ts';

/** Where to go with what is selected: on a phone at the thumb, in sight however far the drawer is open. */
export function SiteKeys() {
  const { desk } = useActions();
  const subject = usePlace((state) => state.subject);
  const isKept = useBook((state) => subject?.kind === 'site' && state.sites.has(subject.id));
  const named = useDistrict((state) => state.district !== null);
  let second: ReactNode;
  if (isKept) {
    second = (
      <button type="button" className="key" onClick={() => desk.goTo('check')}>
        Roadside check
      </button>
    );
  } else if (subject?.kind === 'point' && named) {
    second = (
      <button type="button" className="key" onClick={() => void desk.sites.place(subject.at)}>
        Keep as a site
      </button>
    );
  } else return null;
  return (
    <nav className="site-keys" aria-label="What to do here">
      <button type="button" className="key" onClick={() => desk.goTo('study')}>
        Study
      </button>
      {second}
      <button type="button" className="key-quiet" onClick={() => desk.show(null)}>
        all sites
      </button>
    </nav>
  );
}
