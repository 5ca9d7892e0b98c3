/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import type { CallSite } from '../../../io/offline/index.ts';
import type { Study } from '../../../study/index.ts';
import type { BesideStudy } from '../plan/from-book.ts';
import { useCall, useCallState } from './use-call.ts';

/** What the book keeps of a site beside its study: landing zones and where to gather, the first photo without a patient. */
export function FromBook({ study, site }: { study: Study; site: CallSite }) {
  const call = useCall();
  const units = useCallState().pack?.units ?? 'us';
  const [found, setFound] = useState<(BesideStudy & { readonly of: string }) | null>(null);
  useEffect(() => {
    let current = true;
    const look = async (): Promise<void> => {
      const book = await call.book();
      if (!book) return;
      const { besideStudy } = await import('../plan/from-book.ts');
      const beside = await besideStudy(book, site.id, study, units);
      if (current) setFound({ of: site.id, ...beside });
    };
    void look();
    return () => {
      current = false;
    };
  }, [call, study, site.id, units]);
  if (found?.of !== site.id) return null;
  const { places, photos } = found;
  const [photo] = photos;
  return (
    <>
      {places.length > 0 && (
        <>
          <h2>Where others come</h2>
          <ul>
            {places.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      )}
      {photo && (
        <figure>
          <img
            src={photo.data}
            alt={photo.caption || 'Photo of the site'}
            width={photo.widthPx}
            height={photo.heightPx}
          />
          {photo.caption && <figcaption>{photo.caption}</figcaption>}
        </figure>
      )}
    </>
  );
}
