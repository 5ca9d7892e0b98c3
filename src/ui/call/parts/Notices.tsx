/** @jsxImportSource preact */
import { useCall, useCallState } from './use-call.ts';

/** News of the district and of the app itself, at the end of the page: never over what is being read, and nothing reloads by itself. */
export function Notices() {
  const { place } = useCallState();
  return (
    <>
      {place.kind !== 'start' && <NewerDistrict />}
      <NewerApp />
    </>
  );
}

/** That there is a newer state of the district, with the way to it; on the first screen it stands with what is kept. */
export function NewerDistrict() {
  const call = useCall();
  const { newer, keeping, pack } = useCallState();
  if (!newer) return null;
  const what = pack?.publishedAtMs === undefined ? 'The book has changed since' : 'A newer publication is there';
  return (
    <aside class="notice" aria-live="polite" data-testid="newer-district">
      <p>{what}. This screen stays as it is until you take it.</p>
      <button type="button" class="plain" disabled={keeping !== null} onClick={() => void call.takeNewer()}>
        {keeping === null ? 'Take it now' : `Taking it: ${keeping.done} of ${keeping.of || '…'} studies`}
      </button>
    </aside>
  );
}

function NewerApp() {
  const { shell } = useCallState();
  if (shell?.kind === 'waiting') {
    const others =
      shell.others > 0
        ? ` ${shell.others} other window${shell.others === 1 ? ' is' : 's are'} open and will go on with the present one until reloaded.`
        : '';
    return (
      <aside class="notice" data-testid="new-version">
        <p>A newer version is ready. This screen stays as it is until you take it.{others}</p>
        <button type="button" class="plain" onClick={shell.take}>
          Take it now
        </button>
      </aside>
    );
  }
  if (shell?.kind === 'overtaken') {
    return (
      <aside class="notice" data-testid="overtaken">
        <p>Another window runs a newer version. This one goes on with its own; reload when it suits.</p>
        <button type="button" class="plain" onClick={() => location.reload()}>
          Reload
        </button>
      </aside>
    );
  }
  return null;
}
