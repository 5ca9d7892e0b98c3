import type { Book, PhotoRecord } from '../book/index.ts';
import { photosToSend } from '../io/index.ts';
import type { SheetPhoto } from '../plan/index.ts';

/** The first photo of a site that shows no patient and whose bytes `read` finds, as a data address. */
export async function sitePhotos(
  book: Book,
  siteId: string,
  read: (hash: string) => Promise<Blob | null>,
): Promise<SheetPhoto[]> {
  const own = photosToSend(book, { crashes: false, patientPhotos: false }).filter((photo) => photo.siteId === siteId);
  for (const photo of own) {
    const blob = await read(photo.hash).catch(() => null);
    if (blob) return [await shown(photo, blob)];
  }
  return [];
}

const shown = ({ caption, widthPx, heightPx }: PhotoRecord, blob: Blob): Promise<SheetPhoto> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve({ data: String(reader.result), caption, widthPx, heightPx });
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
