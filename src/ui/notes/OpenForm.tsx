import { type DragEvent, type FormEvent, useEffect, useRef, useState } from 'react';
import type { ElevationOptions } from '../../io/index.ts';
import type { FilesToKeep } from '../../io/web/index.ts';
import type { VerticalUnit } from '../../units/index.ts';
import type { OwnFiles } from '../actions/index.ts';
import { useActions } from '../desk-context.ts';
import { KeptFiles } from '../own/KeptFiles.tsx';
import { dropKept, keepFiles, useKept } from '../own/kept-store.ts';
import { useDistrict } from '../state/index.ts';

/** The form for own files: what to open, and what the files may not say of themselves. Nothing leaves this machine. */
export function OpenForm() {
  const { desk } = useActions();
  const opening = useDistrict((state) => state.opening);
  const invented = useDistrict((state) => state.district?.invented ?? false);
  const copying = useKept((state) => state.copying !== null);
  const [problem, setProblem] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);

  const dropped = useDistrict((state) => state.dropped);
  useEffect(() => {
    if (!dropped || !form.current) return;
    fillIn(form.current, dropped);
    desk.takeDropped();
  }, [dropped, desk]);

  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const data = new FormData(event.currentTarget);
    const rmse = rmseOf(data);
    if (Number.isNaN(rmse)) {
      setProblem(
        `"${data.get('rmse')}" is no accuracy; give the vertical RMSE as a number of metres over 0, or leave it empty.`,
      );
      return;
    }
    const files = readForm(data, rmse);
    const missing = files.elevation.length === 0 ? 'an elevation file' : files.roads === null ? 'a road file' : null;
    setProblem(missing && `Choose ${missing} first.`);
    if (!missing) void open(files, data.has('keep'));
  };
  const open = async (files: OwnFiles, toBeKept: boolean): Promise<void> => {
    if (!toBeKept || picked(files).length === 0) {
      await desk.openOwn(files);
      return;
    }
    const kept = await keepFiles(toKeep(files));
    if (!kept) return;
    const { id, ...copied } = kept;
    // What lies behind an address stays there and is read by parts.
    const addresses = files.elevation.filter((origin) => typeof origin === 'string');
    const opened = await desk.openOwn({ ...copied, elevation: [...copied.elevation, ...addresses], keptId: id });
    // What cannot be opened is not worth its room.
    if (!opened) await dropKept(id);
  };
  const onDrop = (event: DragEvent): void => {
    event.preventDefault();
    if (form.current) fillIn(form.current, [...event.dataTransfer.files]);
  };
  return (
    <form
      ref={form}
      className="open-form"
      onSubmit={onSubmit}
      onDrop={onDrop}
      onDragOver={(event) => event.preventDefault()}
    >
      <section className="block">
        <h2>Files</h2>
        <label>
          Elevation: GeoTIFF, one or several, the finest counts
          <input type="file" name="elevation" accept=".tif,.tiff,image/tiff" multiple />
        </label>
        <label>
          Or the web address of a GeoTIFF, read by parts
          <input type="url" name="address" placeholder="https://" spellCheck={false} />
        </label>
        <label>
          Roads: GeoJSON or Overpass JSON
          <input type="file" name="roads" accept=".geojson,.json,application/geo+json,application/json" />
        </label>
        <label>
          Marks, if there are any: GeoJSON
          <input type="file" name="marks" accept=".geojson,.json,application/geo+json,application/json" />
        </label>
        <p className="note">Or drop the files on this form. They are read here and go nowhere.</p>
        <label className="check-line">
          <input type="checkbox" name="keep" defaultChecked />
          Keep the files on this device, to open them again without choosing
        </label>
      </section>
      <KeptFiles onOpen={(files) => void desk.openOwn(files)} onDemo={desk.openDemo} />
      <section className="block">
        <h2>What the elevation may not say</h2>
        <label>
          What it shows
          <select name="kind" defaultValue="">
            <option value="">as the file says</option>
            <option value="bare earth">bare earth</option>
            <option value="surface">surface, with trees and roofs</option>
          </select>
        </label>
        <label>
          Coordinate system
          <input type="text" name="crs" placeholder="EPSG:32609, only if the file lacks it" spellCheck={false} />
        </label>
        <label>
          Unit of its heights
          <select name="verticalUnit" defaultValue="">
            <option value="">as the file says</option>
            <option value="m">metres</option>
            <option value="ft">feet</option>
            <option value="us-ft">US survey feet</option>
          </select>
        </label>
        <label>
          Vertical RMSE, metres
          <input type="text" inputMode="decimal" name="rmse" placeholder="only if the file lacks it" />
        </label>
        <label>
          Day of collection, only if the file lacks it
          <input type="date" name="collectedOn" />
        </label>
      </section>
      <p className="form-problem" role="alert">
        {problem}
      </p>
      <div className="form-keys">
        <button type="submit" className="key" disabled={opening !== null || copying}>
          Open
        </button>
        {opening !== null && (
          <button type="button" className="key-quiet" onClick={desk.stopOpening}>
            stop
          </button>
        )}
        <a className="key-quiet" href="#/">
          back
        </a>
        {!invented && (
          <button type="button" className="key-quiet" onClick={() => void desk.openDemo()}>
            back to the demo district
          </button>
        )}
      </div>
    </form>
  );
}

/** The vertical RMSE as typed, metres; null where nothing was typed, NaN where it is no number over zero. */
function rmseOf(data: FormData): number | null {
  const typed = String(data.get('rmse') ?? '').trim();
  if (typed === '') return null;
  const value = Number(typed.replace(',', '.'));
  return value > 0 && Number.isFinite(value) ? value : Number.NaN;
}

function readForm(data: FormData, rmse: number | null): OwnFiles {
  const files = (name: string): File[] =>
    data.getAll(name).filter((value): value is File => value instanceof File && value.size > 0);
  const text = (name: string): string => String(data.get(name) ?? '').trim();
  const options: ElevationOptions = {
    ...(text('crs') ? { crs: text('crs') } : {}),
    ...(text('kind') ? { kind: text('kind') as 'bare earth' | 'surface' } : {}),
    ...(text('verticalUnit') ? { verticalUnit: text('verticalUnit') as VerticalUnit } : {}),
    ...(rmse === null ? {} : { verticalRmseM: rmse }),
    ...(text('collectedOn') ? { collectedOn: text('collectedOn') } : {}),
  };
  const address = text('address');
  const elevation = [...files('elevation'), ...(address ? [address] : [])];
  return { elevation, roads: files('roads')[0] ?? null, marks: files('marks')[0] ?? null, options };
}

const picked = ({ elevation }: OwnFiles): File[] => elevation.filter((origin) => origin instanceof File);

/** What of the form's files is to lie on this device, under the name of its first raster. */
function toKeep(own: OwnFiles): FilesToKeep {
  const { roads, marks, options } = own;
  const rasters = picked(own);
  return {
    name: rasters[0]!.name,
    options,
    files: [
      ...rasters.map((file) => ({ role: 'elevation' as const, file })),
      ...(roads ? [{ role: 'roads' as const, file: roads }] : []),
      ...(marks ? [{ role: 'marks' as const, file: marks }] : []),
    ],
  };
}

/** Puts dropped files where they belong by their endings: rasters, then roads, then marks. */
function fillIn(form: HTMLFormElement, dropped: readonly File[]): void {
  const put = (name: string, files: readonly File[]): void => {
    const input = form.elements.namedItem(name);
    if (!(input instanceof HTMLInputElement) || files.length === 0) return;
    const list = new DataTransfer();
    for (const file of files) list.items.add(file);
    input.files = list.files;
  };
  put(
    'elevation',
    dropped.filter(({ name }) => /\.tiff?$/i.test(name)),
  );
  const texts = dropped.filter(({ name }) => /\.(geo)?json$/i.test(name));
  const marks = texts.filter(({ name }) => /mark/i.test(name));
  put('roads', texts.filter((file) => !marks.includes(file)).slice(0, 1));
  put('marks', marks.slice(0, 1));
}
