import { useSyncExternalStore } from 'react';
import { useBook } from '../state/index.ts';

function listen(changed: () => void): () => void {
  window.addEventListener('online', changed);
  window.addEventListener('offline', changed);
  return () => {
    window.removeEventListener('online', changed);
    window.removeEventListener('offline', changed);
  };
}

/** Whether there is a signal, and whether what was found is kept. */
export function KeptWords() {
  const { saving, problem, unsaved } = useBook();
  const online = useSyncExternalStore(listen, () => navigator.onLine);
  const bad = unsaved > 0 || problem !== null;
  const kept = bad ? `not saved${problem ? `: ${problem}` : ''}` : saving > 0 ? 'saving' : 'kept here';
  return (
    <span className={bad ? 'check-kept accent' : 'check-kept'} role="status">
      {online ? kept : `no signal; ${kept}`}
    </span>
  );
}
