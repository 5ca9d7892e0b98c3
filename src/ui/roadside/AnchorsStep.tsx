import { useState } from 'react';
import type { Change } from '../../book/merge/index.ts';
import { photoEdit, readPhoto } from '../book/index.ts';
import { useActions } from '../desk-context.ts';
import { sentenceOf } from '../sentence-of.ts';
import { useBook } from '../state/index.ts';
import { anchorsOf } from './computed-words.ts';
import { Choices, Keys } from './Keys.tsx';
import type { StepProps } from './step-props.ts';

const verdicts = ['sound', 'not sound'] as const;

/** Two anchors looked at, one after the other: which, whether it is sound, a photo. A photo's place is not kept. */
export function AnchorsStep({ site, study, onDone, onCannot }: StepProps) {
  const { desk } = useActions();
  const marks = useBook((state) => state.marks);
  const [seen, setSeen] = useState<readonly string[]>([]);
  const [id, setId] = useState('');
  const [other, setOther] = useState('');
  const [verdict, setVerdict] = useState<string | null>(null);
  const [photo, setPhoto] = useState<File | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const offered = study ? anchorsOf(study) : [];
  const words = offered.find((one) => one.id === id)?.words ?? other.trim();
  const keep = async (): Promise<void> => {
    try {
      const changes: Change[] = [];
      let blobs = new Map<string, Blob>();
      const isMark = marks.has(id);
      if (isMark) changes.push({ table: 'marks', id, set: { soundAtLook: verdict === 'sound' } });
      if (photo) {
        const edit = photoEdit(await readPhoto(photo), {
          siteId: site.id,
          markId: isMark ? id : null,
          caption: `Anchor: ${words}`.slice(0, 200),
          showsPatient: false,
          keepPlace: false,
        });
        changes.push(...edit.changes);
        blobs = edit.photos;
      }
      if (changes.length > 0 && !(await desk.edit(`Look at the anchor ${words}`, changes, blobs))) {
        setWhy('Not saved; try again.');
        return;
      }
    } catch (error) {
      setWhy(sentenceOf(error));
      return;
    }
    const now = [...seen, `${words} ${verdict}${photo ? ', photo' : ', no photo'}`];
    if (now.length === 2) onDone(now.join('; '));
    setSeen(now);
    setId('');
    setOther('');
    setVerdict(null);
    setPhoto(null);
    setWhy(null);
  };
  const ready = words !== '' && verdict !== null;
  return (
    <>
      <div className="field-pair">
        <label className="field">
          <span>{seen.length === 0 ? 'First anchor' : 'Second anchor'}</span>
          <select value={id} onChange={(event) => setId(event.target.value)}>
            <option value="">another, in words</option>
            {offered.map((one) => (
              <option key={one.id} value={one.id}>
                {one.words}
              </option>
            ))}
          </select>
        </label>
        {id === '' && (
          <label className="field">
            <span>Which</span>
            <input value={other} maxLength={100} onChange={(event) => setOther(event.target.value)} />
          </label>
        )}
      </div>
      <Choices
        legend="Alive and rooted, or firm in the ground"
        choices={verdicts}
        chosen={verdict}
        onChoose={setVerdict}
      />
      <label className="field">
        <span>Photo, with no patient in it</span>
        <input
          key={seen.length}
          type="file"
          accept="image/*"
          capture="environment"
          onChange={(event) => setPhoto(event.target.files?.[0] ?? null)}
        />
      </label>
      <Keys
        main={ready ? `keep: ${words}` : 'choose one'}
        small={`${seen.length + 1} of 2${photo ? ', with its photo' : ', no photo yet'}`}
        disabled={!ready}
        onKeep={() => void keep()}
        onCannot={onCannot}
      />
      <p className="check-rule">
        {why ??
          'What an anchor holds is never told from a look: a go or no-go. Rails, signs and poles are never anchors.'}
      </p>
    </>
  );
}
