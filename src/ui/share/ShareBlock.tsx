import { lazy, Suspense, useState } from 'react';
import type { Study } from '../../study/index.ts';

const ShareSite = lazy(async () => ({ default: (await import('./ShareSite.tsx')).ShareSite }));

/** Ways to give one site to somebody else, closed until somebody asks. */
export function ShareBlock({ study, siteId }: { readonly study: Study; readonly siteId: string }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="block key-list" id="share" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Share this site</summary>
      {open && (
        <Suspense fallback={null}>
          <ShareSite study={study} siteId={siteId} />
        </Suspense>
      )}
    </details>
  );
}
