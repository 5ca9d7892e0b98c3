import { useRef, useState } from 'react';
import type { PhotoRecord } from '../../../book/index.ts';
import { formatDecimalDegrees } from '../../../geo/index.ts';
import { useActions } from '../../desk-context.ts';
import { Photo } from './Photo.tsx';

/** Photos small, each with what it shows and when it was taken; a tap shows it large. `nameOf`: the site's name where many are listed. */
export function PhotoList({ photos, nameOf }: Props) {
  const { desk } = useActions();
  const large = useRef<HTMLDialogElement>(null);
  const [shown, setShown] = useState<PhotoRecord | null>(null);
  const enlarge = (photo: PhotoRecord): void => {
    setShown(photo);
    large.current?.showModal();
  };
  if (photos.length === 0) return <p className="note">No photos yet.</p>;
  return (
    <>
      <ul className="photo-list">
        {photos.map((photo) => (
          <li key={photo.id}>
            <figure>
              <button
                type="button"
                className="photo-key"
                aria-label={`Show large: ${photo.caption || 'photo of the site'}`}
                onClick={() => enlarge(photo)}
              >
                <Photo photo={photo} />
              </button>
              <figcaption>
                {nameOf && <b>{nameOf(photo.siteId)}</b>}
                {nameOf && photo.caption && ', '}
                <PhotoWords photo={photo} />
              </figcaption>
            </figure>
            {!photo.showsPatient && photo.showsPlate === null && (
              <button
                type="button"
                className="key-quiet"
                onClick={() =>
                  void desk.edit('Say that no number plate can be read', [
                    { table: 'photos', id: photo.id, set: { showsPlate: false } },
                  ])
                }
              >
                no number plate in it
              </button>
            )}
            <button
              type="button"
              className="strike"
              onClick={() =>
                void desk.edit('Delete photo', [{ table: 'photos', id: photo.id, set: { deleted: true } }])
              }
            >
              delete
            </button>
          </li>
        ))}
      </ul>
      <dialog ref={large} className="photo-large" aria-label="Photo, large" onClose={() => setShown(null)}>
        {shown && (
          <figure>
            <Photo photo={shown} />
            <figcaption>
              <PhotoWords photo={shown} />
            </figcaption>
          </figure>
        )}
        <button type="button" className="key" onClick={() => large.current?.close()}>
          close
        </button>
      </dialog>
    </>
  );
}

function PhotoWords({ photo: { caption, takenOn, at, showsPatient, showsPlate } }: { readonly photo: PhotoRecord }) {
  const words = [caption, takenOn ?? 'day not known', at && `taken at ${formatDecimalDegrees(at)}`];
  return (
    <>
      {words.filter(Boolean).join(', ')}
      {showsPatient && <i>, shows a patient: leaves the book only when asked for</i>}
      {!showsPatient && showsPlate !== false && (
        <i>
          , {showsPlate ? 'a number plate can be read' : 'not looked for number plates'}: not published unless asked for
        </i>
      )}
    </>
  );
}

interface Props {
  readonly photos: readonly PhotoRecord[];
  nameOf?(siteId: string): string;
}
