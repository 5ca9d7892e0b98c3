import { useEffect, useState } from 'react';
import type { KeptFiles as OpenedFiles } from '../../io/web/index.ts';
import { openKept, refreshKept, removeKept, stopKeeping, undoRemoval, useKept } from './kept-store.ts';
import { ownDistrict } from './own-district.ts';

interface Props {
  readonly onOpen: (files: OpenedFiles & { readonly keptId: string }) => void;
  /** Goes back to the demo district. */
  readonly onDemo: () => Promise<void>;
}

/** Files kept on this device: to be opened again, removed, with the room they take. */
export function KeptFiles({ onOpen, onDemo }: Props) {
  const { sets, used, removed, problem } = useKept();
  useEffect(() => {
    void refreshKept();
  }, []);
  const open = async (id: string): Promise<void> => {
    const files = await openKept(id);
    if (files) onOpen({ ...files, keptId: id });
  };
  return (
    <section className="block" aria-label="Kept on this device">
      <h2>Kept on this device</h2>
      <CopyProgress />
      <p className="form-problem" role="alert">
        {problem}
      </p>
      <ul className="kept-list">
        {(sets ?? []).map(({ id, name, bytes, files }) => (
          <li key={id}>
            <button type="button" onClick={() => void open(id)}>
              {name}
            </button>
            <span className="num">
              {files.length === 1 ? '1 file' : `${files.length} files`}, {megabytes(bytes)}
            </span>
            <button type="button" aria-label={`Remove ${name}`} onClick={() => void removeKept(id)}>
              remove
            </button>
          </li>
        ))}
      </ul>
      {removed && (
        <p role="status">
          {removed.name} is removed.{' '}
          <button type="button" className="key-quiet" onClick={() => void undoRemoval()}>
            undo
          </button>
        </p>
      )}
      {sets?.length === 0 && !removed && (
        <p className="note">Nothing yet. Files you keep open again without being chosen.</p>
      )}
      <OpensByItself onDemo={onDemo} />
      {used && <p className="note">{storageWords(used)}</p>}
    </section>
  );
}

/** Which district opens by itself, with the way back to the demo. */
function OpensByItself({ onDemo }: Pick<Props, 'onDemo'>) {
  const { sets } = useKept();
  const [own, setOwn] = useState(() => ownDistrict(localStorage));
  const shown = own && sets?.find(({ id }) => id === own.keptId);
  if (!shown) return null;
  const showDemo = async (): Promise<void> => {
    await onDemo();
    setOwn(ownDistrict(localStorage));
  };
  return (
    <p className="note">
      {shown.name} opens by itself on this device, here and in the call view.{' '}
      <button type="button" className="key-quiet" onClick={() => void showDemo()}>
        the demo instead
      </button>
    </p>
  );
}

/** How far the copying has come, with a way to stop it. */
function CopyProgress() {
  const copying = useKept((state) => state.copying);
  if (!copying) return null;
  const { done, of } = copying;
  return (
    <p className="copy-progress">
      <progress max={Math.max(1, of)} value={done} aria-label="Copying onto this device" />
      <span className="num">
        {megabytes(done)} of {megabytes(of)}
      </span>
      <button type="button" className="key-quiet" onClick={stopKeeping}>
        stop
      </button>
    </p>
  );
}

function storageWords({
  usedBytes,
  quotaBytes,
  lasting,
}: {
  readonly usedBytes: number;
  readonly quotaBytes: number | null;
  readonly lasting: boolean;
}): string {
  const of = quotaBytes === null ? '' : ` of ${megabytes(quotaBytes)} that this browser gives`;
  const last = lasting ? '' : ' The browser may clear it by itself when the device runs full.';
  return `Brinkbook uses ${megabytes(usedBytes)}${of}.${last}`;
}

const megabytes = (bytes: number): string => {
  const mb = bytes / 1024 / 1024;
  return mb >= 10_000 ? `${(mb / 1024).toFixed(0)} GB` : `${mb < 10 ? mb.toFixed(1) : mb.toFixed(0)} MB`;
};
