import { useActions } from '../desk-context.ts';
import { useBook } from '../state/index.ts';

/** Whether what is shown is kept: "saving", "saved on this device", or why not. */
export function StorageLine() {
  const { desk } = useActions();
  const { saving, problem, unsaved, fleeting, opened } = useBook();
  if (!opened) return null;
  const bad = unsaved > 0 || problem !== null || fleeting;
  const words =
    unsaved > 0
      ? `not saved: ${unsaved} ${unsaved === 1 ? 'edit is' : 'edits are'} on this screen alone. ${problem ?? ''} `
      : problem !== null
        ? `not saved: ${problem}`
        : saving > 0
          ? 'saving'
          : fleeting
            ? 'not saved: this browser keeps nothing once the page is closed'
            : 'saved on this device';
  return (
    <p className={bad ? 'storage-line accent' : 'storage-line'} role="status" data-testid="storage">
      {words}
      {unsaved > 0 && (
        <button type="button" className="key-quiet" onClick={() => void desk.saveAgain()}>
          try again
        </button>
      )}
    </p>
  );
}
