import { type FormEvent, useState } from 'react';
import { live, type SiteRecord } from '../../../book/index.ts';
import { formatDecimalDegrees } from '../../../geo/index.ts';
import type { TakenPhoto } from '../../../io/index.ts';
import { useActions } from '../../desk-context.ts';
import { sentenceOf } from '../../sentence-of.ts';
import { Photo } from '../Photo.tsx';
import { photoEdit, readPhoto } from '../take-photo.ts';
import type { LeafProps } from './leaf-props.ts';

/** Photos of the sites: taken here or from a file, with what they show. */
export function PhotosLeaf({ book }: LeafProps) {
  const { desk } = useActions();
  const sites = live(book, 'sites').sort((a, b) => a.name.localeCompare(b.name, 'en'));
  const names = new Map(sites.map(({ id, name }) => [id, name]));
  const photos = live(book, 'photos');
  if (sites.length === 0) return <p>No sites yet; a photo belongs to a site. Place one on the survey screen first.</p>;
  return (
    <>
      <PhotoForm sites={sites} />
      {photos.length === 0 && <p className="note">No photos yet.</p>}
      <ul className="photo-list">
        {photos.map((photo) => (
          <li key={photo.id}>
            <figure>
              <Photo photo={photo} />
              <figcaption>
                <b>{names.get(photo.siteId) ?? 'A site that is deleted'}</b>
                {photo.caption && `, ${photo.caption}`}
                {photo.takenOn && `, ${photo.takenOn}`}
                {photo.at && `, taken at ${formatDecimalDegrees(photo.at)}`}
                {photo.showsPatient && <i>, shows a patient: leaves the book only when asked for</i>}
              </figcaption>
            </figure>
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
    </>
  );
}

/** Takes one photo: first it is read and shown with what its file says, then a person says what it shows. */
function PhotoForm({ sites }: { readonly sites: readonly SiteRecord[] }) {
  const { desk } = useActions();
  const [taken, setTaken] = useState<TakenPhoto | null>(null);
  const [reading, setReading] = useState(false);
  const [why, setWhy] = useState<string | null>(null);
  const pick = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setWhy(null);
    setReading(true);
    try {
      setTaken(await readPhoto(file));
    } catch (error) {
      setWhy(sentenceOf(error));
    }
    setReading(false);
  };
  const onSubmit = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const patient = data.get('patient');
    if (!taken || (patient !== 'yes' && patient !== 'no')) {
      setWhy('Say whether the photo shows a patient.');
      return;
    }
    const { changes, photos } = photoEdit(taken, {
      siteId: String(data.get('site')),
      caption: String(data.get('caption')).trim().slice(0, 200),
      showsPatient: patient === 'yes',
      keepPlace: data.has('place'),
    });
    if (await desk.edit('Add photo', changes, photos)) setTaken(null);
    else setWhy('Not saved: see the line at the top; the photo is still here.');
  };
  return (
    <form className="photo-form" aria-label="Add a photo" onSubmit={(event) => void onSubmit(event)}>
      <label className="field">
        <span>Photo from the camera or a file</span>
        <input type="file" accept="image/*" onChange={(event) => void pick(event.target.files?.[0])} />
      </label>
      {reading && <p role="status">Reading the photo.</p>}
      {taken && (
        <>
          <label className="field">
            <span>Of site</span>
            <select name="site">
              {sites.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <label className="field">
            <span>What it shows</span>
            <input name="caption" maxLength={200} autoComplete="off" />
          </label>
          <fieldset className="some-of">
            <legend>A patient can be seen or told</legend>
            <label className="tick">
              <input type="radio" name="patient" value="no" /> no
            </label>
            <label className="tick">
              <input type="radio" name="patient" value="yes" /> yes
            </label>
          </fieldset>
          {taken.at ? (
            <label className="tick">
              <input type="checkbox" name="place" /> keep where the camera says it was taken,{' '}
              {formatDecimalDegrees(taken.at)}
            </label>
          ) : (
            <p className="note">The file says no place.</p>
          )}
          <p className="note">
            {taken.fields.widthPx} × {taken.fields.heightPx}, {Math.round(taken.fields.sizeBytes / 1024)} kB. All other
            camera data is taken off.
          </p>
          <div className="form-keys">
            <button type="submit" className="key">
              Keep the photo
            </button>
            <button type="button" className="key-quiet" onClick={() => setTaken(null)}>
              not this one
            </button>
          </div>
        </>
      )}
      {why && (
        <p className="field-why" role="alert">
          {why}
        </p>
      )}
    </form>
  );
}
