/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import { dayWords } from './day-words.ts';
import { useCall, useCallState } from './use-call.ts';

/** What is on this device, and how fresh: app, sites, elevation. One line where all is well, a sentence where it is not. */
export function KeptLine() {
  const call = useCall();
  const { kept, keeping, keepProblem, shell, online, bookBehind } = useCallState();
  if (!kept) return <p class="kept" />;
  const { pack, studies, elevationPages, lost } = kept;
  const mb = Math.round((elevationPages * 256) / 1024);
  const app = shell?.kind === 'failed' || shell?.kind === 'none' ? 'the app itself is not kept' : 'app';
  return (
    <div class="kept" aria-live="polite">
      {lost && !keeping && (
        <p class="alarm">
          This browser has cleared what was kept ({lost.sites} sites of {lost.district}, {dayWords(lost.atMs)}).{' '}
          {online ? 'It has to be kept again.' : 'Connect to a network to keep it again.'}
        </p>
      )}
      {keeping && (
        <p>
          Keeping the sites for use without a network: {keeping.done} of {keeping.of || '…'} studies.
          <progress value={keeping.done} max={keeping.of || 1} />
        </p>
      )}
      {keepProblem && <p class="alarm">{keepProblem}</p>}
      {pack && !lost && !keeping && (
        <p>
          {online ? 'Kept' : 'No network. Kept'} on this device: {app}, {studies} of {pack.sites.length} sites with
          their studies, {pack.groundHere ? 'the elevation files' : `${mb} MB of elevation`}; {dayWords(pack.madeAtMs)}.
        </p>
      )}
      {pack && !keeping && <Lasting />}
      {bookBehind && !keeping && (
        <p class="alarm">
          The newest edits of the book are not in these plans yet: they are taken once the desk is closed.
        </p>
      )}
      {shell?.kind === 'failed' && <p class="alarm">{shell.why}</p>}
      {(lost || keepProblem) && online && !keeping && (
        <button type="button" class="plain" onClick={() => void call.keep()}>
          Keep again
        </button>
      )}
    </div>
  );
}

/** Whether the browser may clear what is kept; it is asked not to when a person wishes it, and its answer is shown. */
function Lasting() {
  const [lasting, setLasting] = useState<boolean | null>(null);
  const [refused, setRefused] = useState(false);
  useEffect(() => {
    void navigator.storage?.persisted?.().then(setLasting, () => setLasting(null));
  }, []);
  if (lasting !== false) return null;
  if (refused) return <p>The browser does not promise to keep it: open this page now and then, and look here.</p>;
  const ask = async (): Promise<void> => {
    const answer = await navigator.storage.persist().catch(() => false);
    setLasting(answer);
    setRefused(!answer);
  };
  return (
    <button type="button" class="plain" onClick={() => void ask()}>
      Ask the browser not to clear it
    </button>
  );
}
