import { useEffect, useState } from 'react';
import { askToPersist, storageState } from '../../io/web/store/index.ts';
import { useBook } from '../state/index.ts';

/** Once something was written here, asks for the browser's promise to keep it; says so where it is refused. */
export function PersistAsk() {
  const { undo, sites } = useBook();
  const [kept, setKept] = useState<boolean | null>(null);
  const [refused, setRefused] = useState(false);
  useEffect(() => {
    void storageState().then(({ persisted }) => setKept(persisted));
  }, []);
  if (kept !== false || undo === null || sites.size === 0) return null;
  const ask = async (): Promise<void> => {
    const given = await askToPersist();
    setKept(given);
    setRefused(!given);
  };
  return (
    <p className="persist-ask">
      {refused ? (
        'The browser gives no promise: it may clear the book when the device runs full. Keep a copy elsewhere.'
      ) : (
        <>
          The browser may clear the book when the device runs full.{' '}
          <button type="button" className="key-quiet" onClick={() => void ask()}>
            ask it to keep the book
          </button>
        </>
      )}
    </p>
  );
}
