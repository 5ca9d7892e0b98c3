import { type FormEvent, useEffect, useState } from 'react';
import type { SiteRecord } from '../../../book/index.ts';
import { formatDecimalDegrees } from '../../../geo/index.ts';
import type { TakenPhoto } from '../../../io/index.ts';
import { useActions } from '../../desk-context.ts';
import { sentenceOf } from '../../sentence-of.ts';
import { photoEdit, readPhoto } from './take-photo.ts';

/** Takes one photo: first it is read and shown with what its file says, then a person says what it shows. One site is not asked for. */
export function PhotoForm({ sites }: { readonly sites: readonly Pick<SiteRecord, 'id' | 'name'>[] }) {
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
      siteId: sites.length === 1 ? sites[0]!.id : String(data.get('site')),
      caption: String(data.get('caption')).trim().slice(0, 200),
      showsPatient: patient === 'yes',
      showsPlate: plates[String(data.get('plate'))] ?? null,
      keepPlace: data.has('place'),
    });
    setWhy(null);
    if (await desk.edit('Add photo', changes, photos)) setTaken(null);
    else setWhy('Not saved: see the line at the top; the photo is still here.');
  };
  return (
    <form className="photo-form" aria-label="Add a photo" onSubmit={(event) => void onSubmit(event)}>
      {!taken && (
        <label className="field">
          <span>Photo from the camera or a file</span>
          <input
            type="file"
            accept="image/*"
            onChange={(event) => {
              void pick(event.target.files?.[0]);
              event.target.value = '';
            }}
          />
        </label>
      )}
      {reading && <p role="status">Reading the photo.</p>}
      {taken && (
        <>
          <TakenPicture taken={taken} />
          {sites.length > 1 && <SiteChoice sites={sites} />}
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
          <label className="field">
            <span>A number plate can be read</span>
            <select name="plate">
              <option value="">nobody has looked: not published</option>
              <option value="no">no</option>
              <option value="yes">yes: not published</option>
            </select>
          </label>
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

const plates: Readonly<Record<string, boolean>> = { yes: true, no: false };

const SiteChoice = ({ sites }: { readonly sites: readonly Pick<SiteRecord, 'id' | 'name'>[] }) => (
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
);

/** The photo as it would be kept. */
function TakenPicture({ taken }: { readonly taken: TakenPhoto }) {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([taken.bytes], { type: taken.fields.type }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [taken]);
  return <img className="taken-photo" src={address} alt="As it would be kept" />;
}
