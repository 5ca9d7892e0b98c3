import { useEffect, useState } from 'react';
import type { PhotoRecord } from '../../../book/index.ts';
import { useBook } from '../../state/index.ts';

/** A photo of the book, read from the device; says so where its bytes are not here. */
export function Photo({ photo }: { readonly photo: PhotoRecord }) {
  const opened = useBook((state) => state.opened);
  const [address, setAddress] = useState<string | null | undefined>(undefined);
  const { hash, caption, widthPx, heightPx } = photo;
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    void opened?.photo(hash).then((blob) => {
      if (gone) return;
      made = blob && URL.createObjectURL(blob);
      setAddress(made);
    });
    return () => {
      gone = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [opened, hash]);
  if (address === null)
    return <p className="note">This photo is not on this device; take in the book file that holds it.</p>;
  return (
    <img className="book-photo" src={address} alt={caption || 'Photo of the site'} width={widthPx} height={heightPx} />
  );
}
