import { useActions } from '../desk-context.ts';
import { useBook, usePlace } from '../state/index.ts';
import { Caution } from './Provenance.tsx';

/** The caution, and beside it, where a site is studied, what is to be done next with it. */
export function NotesFoot() {
  const { desk } = useActions();
  const { screen, subject } = usePlace();
  const isKept = useBook((state) => subject?.kind === 'site' && state.sites.has(subject.id));
  return (
    <div className="notes-foot">
      <Caution />
      {screen === 'study' && isKept && (
        <button type="button" className="key" onClick={() => desk.goTo('check')}>
          Check and sign off
        </button>
      )}
    </div>
  );
}
