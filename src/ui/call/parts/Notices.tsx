/** @jsxImportSource preact */
import { useCallState } from './use-call.ts';

/** News of the app itself, at the end of the page: never over what is being read, and nothing reloads by itself. */
export function Notices() {
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
