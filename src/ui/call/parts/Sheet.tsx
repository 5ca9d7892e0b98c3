/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import { appFolder, type CallSite } from '../../../io/offline/index.ts';
import type { Study } from '../../../study/index.ts';
import { handOver } from '../../give-file.ts';
import type { SheetPages } from '../plan/sheet.ts';
import { useCall, useCallState } from './use-call.ts';

/** The plan sheet as on paper, front and back; made here out of the study, so that it needs no network. */
export function Sheet({ study, name, site }: { study: Study; name: string; site: CallSite | null }) {
  const call = useCall();
  const { pack } = useCallState();
  const [open, setOpen] = useState(false);
  const [pages, setPages] = useState<SheetPages | null>(null);
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
      if (current) setPages(sheetPages({ study, name, site, pack, book, photos, today, address }));
    };
    void make();
    return () => {
      current = false;
    };
  }, [open, study, name, site, pack, call]);
  return (
    <>
      <button type="button" class="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Close the plan sheet' : 'Plan sheet'}
      </button>
      {open && pages && (
        <>
          <button
            type="button"
            class="plain"
            onClick={() => void handOver(`${site?.id ?? 'place'}-plan.html`, pages.html(), 'text/html')}
          >
            Share or save it as one file
          </button>
          <div class="sheet" data-testid="sheet">
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: the sheet makes every text of study and book inert. */}
            <div class="narrow" dangerouslySetInnerHTML={{ __html: pages.phone }} />
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: as above. */}
            <div class="paper" dangerouslySetInnerHTML={{ __html: pages.front }} />
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: as above. */}
            <div class="paper" dangerouslySetInnerHTML={{ __html: pages.back }} />
          </div>
        </>
      )}
    </>
  );
}
