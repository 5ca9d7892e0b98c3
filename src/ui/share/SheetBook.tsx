import { useEffect, useRef, useState } from 'react';
import { bookPages, sheetBookHtml } from '../../plan/index.ts';
import { useActions } from '../desk-context.ts';
import { handOver } from '../give-file.ts';
import { sentenceOf } from '../sentence-of.ts';
import { useBook, useDistrict, useReading } from '../state/index.ts';
import { printPages } from './print-pages.ts';
import { sheetsOf } from './sheet-book.ts';
import { paperFor } from './site-sheet.ts';
import { slugOf } from './slug-of.ts';
import './share.css';

interface Props {
  readonly sites: readonly { readonly id: string; readonly name: string }[];
}

/** The plan sheets of the chosen sites in road order behind an index: printed from here, or kept as one file. */
export function SheetBook({ sites }: Props) {
  const { workers } = useActions();
  const opened = useBook((state) => state.opened);
  const district = useDistrict((state) => state.district);
  const units = useReading((state) => state.units);
  const [done, setDone] = useState<number | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);
  const make = async (what: 'print' | 'file'): Promise<void> => {
    if (!opened || !district) return;
    const control = new AbortController();
    running.current = control;
    setSaid(null);
    setDone(0);
    try {
      const asked = { sites, study: workers.study, opened, district, onDone: setDone };
      const { sheets, leftOut } = await sheetsOf(asked, control.signal);
      const options = { paper: paperFor(units), units };
      const name = `${slugOf(district.name)}-plan-sheets.html`;
      if (sheets.length === 0) setSaid('No sheet was made.');
      else if (what === 'print') printPages(bookPages(sheets, options), options.paper);
      else if ((await handOver(name, sheetBookHtml(sheets, options), 'text/html')) === 'downloaded')
        setSaid(`${name} is among this device’s downloads.`);
      if (leftOut.length > 0) setSaid(`Left out: ${leftOut.join(' ')}`);
    } catch (error) {
      setSaid(control.signal.aborted ? 'Stopped; nothing was written.' : `${sentenceOf(error)} Nothing was written.`);
    }
    setDone(null);
  };
  const idle = done === null && district !== null && sites.length > 0;
  return (
    <div className="sheet-book">
      <span>
        Plan sheets of {sites.length === 1 ? 'one site' : `${sites.length} sites`}, by road, with an index and the check
        cards
      </span>
      <span className="form-keys">
        {done === null ? (
          <>
            <button type="button" className="key" disabled={!idle} onClick={() => void make('print')}>
              Print them
            </button>
            <button type="button" className="key" disabled={!idle} onClick={() => void make('file')}>
              Write the sheets
            </button>
          </>
        ) : (
          <button type="button" className="key" onClick={() => running.current?.abort()}>
            Stop
          </button>
        )}
      </span>
      <p role="status" className="note">
        {done === null ? said : `Working out ${done} of ${sites.length}.`}
      </p>
      {done !== null && <progress value={done} max={sites.length} />}
    </div>
  );
}
