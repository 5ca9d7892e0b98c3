import { live } from '../../../book/index.ts';
import { PhotoForm, PhotoList } from '../photos/index.ts';
import type { LeafProps } from './leaf-props.ts';

/** Photos of the sites: taken here or from a file, with what they show. */
export function PhotosLeaf({ book }: LeafProps) {
  const sites = live(book, 'sites').sort((a, b) => a.name.localeCompare(b.name, 'en'));
  const names = new Map(sites.map(({ id, name }) => [id, name]));
  if (sites.length === 0) return <p>No sites yet; a photo belongs to a site. Place one on the survey screen first.</p>;
  return (
    <div className="leaf-columns aside">
      <PhotoForm sites={sites} />
      <section>
        <PhotoList photos={live(book, 'photos')} nameOf={(id) => names.get(id) ?? 'A site that is deleted'} />
      </section>
    </div>
  );
}
