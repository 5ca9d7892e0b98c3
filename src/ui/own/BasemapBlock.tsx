import { type FormEvent, useState } from 'react';
import type { Basemap } from '../../map/index.ts';
import { setBasemap, useBasemap } from './basemap-store.ts';

type Kind = Basemap['kind'];

/** A map of somebody else's to lie under the own one: from an address or from a file. */
export function BasemapBlock() {
  const { basemap } = useBasemap();
  const [kind, setKind] = useState<Kind>(basemap?.kind ?? 'file');
  const [problem, setProblem] = useState<string | null>(null);
  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const next = readForm(new FormData(event.currentTarget), kind);
    setProblem(next ? null : kind === 'file' ? 'Choose a file first.' : 'Give its address first.');
    if (next) setBasemap(next);
  };
  return (
    <form className="open-form" onSubmit={onSubmit} aria-label="A map under it">
      <section className="block">
        <h2>A map under it</h2>
        <label>
          Where it comes from
          <select name="kind" value={kind} onChange={(event) => setKind(event.target.value as Kind)}>
            <option value="file">a PMTiles file, no network needed</option>
            <option value="style">the address of a MapLibre style</option>
            <option value="raster">the address of raster tiles</option>
          </select>
        </label>
        {kind === 'file' ? (
          <label>
            File
            <input type="file" name="file" accept=".pmtiles" />
          </label>
        ) : (
          <label>
            Address
            <input
              type="text"
              name="url"
              inputMode="url"
              spellCheck={false}
              defaultValue={basemap && basemap.kind !== 'file' ? basemap.url : ''}
              placeholder={kind === 'style' ? 'https://' : 'https:// with {z}, {x} and {y}'}
            />
          </label>
        )}
        {kind === 'raster' && (
          <label>
            Whose map it is, in the words that its maker wants to see
            <input
              type="text"
              name="attribution"
              defaultValue={basemap?.kind === 'raster' ? basemap.attribution : ''}
            />
          </label>
        )}
        {kind !== 'file' && <p className="note">Its host learns which places you look at.</p>}
        <p className="form-problem" role="alert">
          {problem}
        </p>
        <div className="form-keys">
          <button type="submit" className="key-quiet">
            show it
          </button>
          {basemap && (
            <button type="button" className="key-quiet" onClick={() => setBasemap(null)}>
              take it away
            </button>
          )}
        </div>
      </section>
    </form>
  );
}

function readForm(data: FormData, kind: Kind): Basemap | null {
  if (kind === 'file') {
    const file = data.get('file');
    return file instanceof File && file.size > 0 ? { kind, file } : null;
  }
  const url = String(data.get('url') ?? '').trim();
  if (url === '') return null;
  return kind === 'style' ? { kind, url } : { kind, url, attribution: String(data.get('attribution') ?? '').trim() };
}
