import { useEffect, useState } from 'react';
import { askToPersist, storageState } from '../../io/web/store/index.ts';
import { useBook } from '../state/index.ts';

/** Once a site was written here, asks for the browser's promise to keep it; says so where it is refused. */
export function PersistAsk() {
  const { undo, sites } = useBook();
  const [kept, setKept] = useState<boolean | null>(null);
  const [refused, setRefused] = useState(false);
  const [later, setLater] = useState(false);
  useEffect(() => {
    void storageState().then(({ persisted }) => setKept(persisted));
  }, []);
  if (kept !== false || undo === null || sites.size === 0 || later) return null;
  const ask = async (): Promise<void> => {
    const given = await askToPersist();
    setKept(given);
    setRefused(!given);
  };
  return (
    <p className="persist-ask" role="status">
      {refused
        ? 'The browser gives no promise: it may clear the book when the device runs full. Keep a copy elsewhere. '
        : 'The browser may clear the book when the device runs full. '}
      {!refused && (
        <button type="button" className="key-quiet" onClick={() => void ask()}>
          ask it to keep the book
        </button>
      )}
      <button type="button" className="key-quiet" onClick={() => setLater(true)}>
        {refused ? 'understood' : 'later'}
      </button>
    </p>
  );
}
