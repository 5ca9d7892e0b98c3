import { useState } from 'react';
import { publishedAddressOf } from '../../book/index.ts';
import { formatDegreesMinutes, formatUsng } from '../../geo/index.ts';
import { writeGpx, writeKml } from '../../io/index.ts';
import { bothSides, codeSvg, planSheetHtml, qrWords } from '../../plan/index.ts';
import type { Study } from '../../study/index.ts';
import { handOver } from '../give-file.ts';
import { sentenceOf } from '../sentence-of.ts';
import { useBook, useDistrict, useReading, useStudy } from '../state/index.ts';
import { CopyLine } from './CopyLine.tsx';
import { printPages } from './print-pages.ts';
import { paperFor, siteSheet } from './site-sheet.ts';
import { slugOf } from './slug-of.ts';
import './share.css';

/** The site's plan sheet and places as files, its link and code, its position in the forms that people and devices read. */
export function ShareSite({ study, siteId }: { readonly study: Study; readonly siteId: string }) {
  const opened = useBook((state) => state.opened);
  const site = useBook((state) => state.sites.get(siteId));
  const district = useDistrict((state) => state.district);
  const working = useStudy((state) => state.working);
  const units = useReading((state) => state.units);
  const [said, setSaid] = useState<string | null>(null);
  if (!opened || !site || !district) return null;
  const published = publishedAddressOf(opened.book());
  const place = qrWords(null, siteId, study.site);
  const link = published === null ? null : qrWords(published, siteId, study.site);
  const give = async (ending: string, type: string, make: () => string | Promise<string>): Promise<void> => {
    const name = `${slugOf(site.name)}${ending}`;
    setSaid('Writing the file.');
    try {
      const became = await handOver(name, await make(), type);
      setSaid(became === 'downloaded' ? `${name} is among this device’s downloads.` : null);
    } catch (error) {
      setSaid(`${sentenceOf(error)} No file was written.`);
    }
  };
  const options = { paper: paperFor(units), units };
  const sheet = (): Promise<void> =>
    give('-plan.html', 'text/html', async () =>
      planSheetHtml(await siteSheet({ opened, district, siteId, study }), options),
    );
  const printed = async (): Promise<void> => {
    try {
      printPages(bothSides(await siteSheet({ opened, district, siteId, study }), options), options.paper);
    } catch (error) {
      setSaid(`${sentenceOf(error)} Nothing was printed.`);
    }
  };
  const choice = { sites: [siteId], crashes: false };
  return (
    <div className="share">
      <div className="form-keys">
        <button type="button" className="key" disabled={working} onClick={() => void sheet()}>
          Plan sheet
        </button>
        <button type="button" className="key" disabled={working} onClick={() => void printed()}>
          Print it
        </button>
        <button
          type="button"
          className="key"
          onClick={() => void give('.gpx', 'application/gpx+xml', () => writeGpx(opened.book(), choice))}
        >
          GPX
        </button>
        <button
          type="button"
          className="key"
          onClick={() =>
            void give('.kml', 'application/vnd.google-earth.kml+xml', () => writeKml(opened.book(), choice))
          }
        >
          KML
        </button>
      </div>
      <p className="note">
        The plan sheet is one file with its check card: it opens on any phone and prints on a page, without a network.
      </p>
      <p role="status" className="note">
        {said}
      </p>
      <div className="share-code">
        <img
          src={`data:image/svg+xml,${encodeURIComponent(codeSvg(link ?? place))}`}
          alt={link === null ? 'Code of the position, for a phone’s map' : 'Code of the link'}
          width="116"
          height="116"
        />
        <div>
          {link === null ? (
            <p className="note">
              A link opens the site only where the book is published; write that address under{' '}
              <a href="#/book?rules">Rules</a>. This code is the position, for a phone’s own map.
            </p>
          ) : (
            <CopyLine what="Link" words={link} />
          )}
          <CopyLine what="geo address" words={place} />
          <CopyLine what="Position" words={formatDegreesMinutes(study.site)} />
          <CopyLine what="US National Grid" words={formatUsng(study.site)} />
        </div>
      </div>
      {link !== null && <p className="note">Anyone who has the link can read the published book.</p>}
    </div>
  );
}
