/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import { appFolder, type CallSite } from '../../../io/offline/index.ts';
import type { Study } from '../../../study/index.ts';
import { handOver } from '../../give-file.ts';
import type { SheetPages } from '../plan/sheet.ts';
import { useCall, useCallState } from './use-call.ts';

/** The hidden sides are drawn once what is seen has been on the screen for this long, milliseconds. */
const REST_MS = 400;

/** Sides of a sheet that were drawn so far; empty where not yet. */
interface Drawn {
  readonly of: SheetPages;
  readonly narrow: string;
  readonly front: string;
  readonly back: string;
}

/** The plan sheet as on paper, front and back; made here out of the study, so that it needs no network. */
export function Sheet({ study, name, site }: { study: Study; name: string; site: CallSite | null }) {
  const call = useCall();
  const { pack } = useCallState();
  const [open, setOpen] = useState(false);
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  // While the plan is read, so that the sheet is there at a touch; what fails is asked for again then.
  useEffect(() => {
    Promise.all([import('../plan/sheet.ts'), import('../plan/from-book.ts')]).catch(() => {});
  }, []);
  useEffect(() => {
    if (!open || !pack) return;
    let current = true;
    const make = async (): Promise<void> => {
      const [{ sheetPages }, { besideStudy }, book] = await Promise.all([
        import('../plan/sheet.ts'),
        import('../plan/from-book.ts'),
        call.book(),
      ]);
      const photos = book && site ? (await besideStudy(book, site.id, study, pack.units)).photos : [];
      const today = new Date().toISOString().slice(0, 10);
      const address = appFolder().href;
      if (!current) return;
      const of = sheetPages({ study, name, site, pack, book, photos, today, address });
      // First what this screen shows, then what it shows when it is turned or printed.
      if (matchMedia('(max-width: 640px)').matches) setDrawn({ of, narrow: of.phone(), front: '', back: '' });
      else setDrawn({ of, narrow: '', front: of.front(), back: of.back() });
    };
    void make();
    return () => {
      current = false;
    };
  }, [open, study, name, site, pack, call]);
  useEffect(() => {
    if (!drawn || (drawn.narrow !== '' && drawn.front !== '')) return;
    const { of, narrow, front, back } = drawn;
    const rest = (): Drawn => ({
      of,
      narrow: narrow || of.phone(),
      front: front || of.front(),
      back: back || of.back(),
    });
    const later = setTimeout(() => setDrawn(rest()), REST_MS);
    return () => clearTimeout(later);
  }, [drawn]);
  return (
    <>
      <button type="button" class="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Close the plan sheet' : 'Plan sheet'}
      </button>
      {open && drawn && (
        <>
          <button
            type="button"
            class="plain"
            onClick={() => void handOver(`${site?.id ?? 'place'}-plan.html`, drawn.of.html(), 'text/html')}
          >
            Share or save it as one file
          </button>
          <div class="sheet" data-testid="sheet">
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: the sheet makes every text of study and book inert. */}
            <div class="narrow" dangerouslySetInnerHTML={{ __html: drawn.narrow }} />
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: as above. */}
            <div class="paper" dangerouslySetInnerHTML={{ __html: drawn.front }} />
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: as above. */}
            <div class="paper" dangerouslySetInnerHTML={{ __html: drawn.back }} />
          </div>
        </>
      )}
    </>
  );
}
