import { useMemo } from 'react';
import { useBook } from '../../state/index.ts';
import { PhotoForm } from './PhotoForm.tsx';
import { PhotoList } from './PhotoList.tsx';

/** The photos of one site on its study, and a way to take another. */
export function SitePhotos({ siteId }: { readonly siteId: string }) {
  const site = useBook((state) => state.sites.get(siteId));
  const all = useBook((state) => state.photos);
  const photos = useMemo(() => [...all.values()].filter((photo) => photo.siteId === siteId), [all, siteId]);
  if (!site) return null;
  return (
    <section className="block site-photos" aria-label="Photos">
      <div className="block-head">
        <h2>Photos</h2>
        <span className="note">the first without a patient goes onto the plan sheet’s back</span>
      </div>
      <PhotoList photos={photos} />
      <PhotoForm key={siteId} sites={[site]} />
    </section>
  );
}
