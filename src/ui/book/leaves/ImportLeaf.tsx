import { useState } from 'react';
import type { CrashPreview, Preview } from '../../../io/index.ts';
import type { BookFileRead } from '../../../workers/index.ts';
import { sentenceOf } from '../../sentence-of.ts';
import { files } from '../files.ts';
import { CrashesFound } from './CrashesFound.tsx';
import type { LeafProps } from './leaf-props.ts';
import { MergeFound } from './MergeFound.tsx';
import { PlacesFound } from './PlacesFound.tsx';

type Found =
  | { readonly what: 'places'; readonly name: string; readonly preview: Preview }
  | { readonly what: 'crashes'; readonly name: string; readonly preview: CrashPreview }
  | { readonly what: 'book'; readonly name: string; readonly read: BookFileRead };

/** A file is read and what it would add is shown; nothing is added before somebody says so. */
export function ImportLeaf({ book }: LeafProps) {
  const [found, setFound] = useState<Found | null>(null);
  const [reading, setReading] = useState<string | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const bounds = book.tables.settings[0]?.bounds ?? null;
  const read = async (what: Found['what'], file: File | undefined): Promise<void> => {
    if (!file) return;
    const { name } = file;
    setFound(null);
    setWhy(null);
    setDone(null);
    setReading(name);
    try {
      if (what === 'places') setFound({ what, name, preview: await files().call('readPlaces', { file, name, book }) });
      else if (what === 'crashes')
        setFound({ what, name, preview: await files().call('readCrashes', { file, name, bounds, sourceId: null }) });
      else setFound({ what, name, read: await files().call('readBook', { file, name }) });
    } catch (error) {
      setWhy(`${sentenceOf(error)} The book is as it was.`);
    }
    setReading(null);
  };
  const end = (words: string | null): void => {
    setFound(null);
    setDone(words);
  };
  const pick = (what: Found['what'], words: string, accept: string) => (
    <label className="field">
      <span>{words}</span>
      <input
        type="file"
        accept={accept}
        onChange={(event) => {
          void read(what, event.target.files?.[0]);
          event.target.value = '';
        }}
      />
    </label>
  );
  return (
    <>
      <div className="picks">
        {pick('places', 'Places: GeoJSON, GPX, KML, KMZ, CSV', '.geojson,.json,.gpx,.kml,.kmz,.csv,.txt')}
        {pick('crashes', 'Crash records: CSV with date, position, severity', '.csv,.txt,.tsv')}
        {pick('book', 'A book: another’s file, or a copy of this one', '.brinkbook,.zip,.json')}
      </div>
      <p className="note">
        Files are read on this device and go nowhere. Of crash records only day, place and severity are kept.
      </p>
      {reading && <p role="status">Reading {reading}.</p>}
      {why && (
        <p className="field-why" role="alert">
          {why}
        </p>
      )}
      {done && <p role="status">{done}</p>}
      {found?.what === 'places' && <PlacesFound key={found.name} {...found} book={book} onEnd={end} />}
      {found?.what === 'crashes' && <CrashesFound key={found.name} {...found} onEnd={end} />}
      {found?.what === 'book' && <MergeFound key={found.name} {...found} onEnd={end} />}
    </>
  );
}
