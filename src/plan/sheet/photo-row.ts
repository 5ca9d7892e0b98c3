import { element } from '../svg.ts';
import { type Draw, paragraph } from './flow.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { SheetPhoto } from './sheet-types.ts';

/** Photos on paper take no more height than this. */
const MOST_HEIGHT = 130;

/** The first photo that lies in the sheet itself, with its caption; others would take the card's room. */
export const photoRow =
  (photos: readonly SheetPhoto[]): Draw =>
  ({ x, y, width }) => {
    const photo = photos.find(({ data }) => /^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/=]+$/u.test(data));
    if (!photo) return { svg: '', height: 0 };
    const scale = Math.min(width / photo.widthPx, MOST_HEIGHT / photo.heightPx);
    const height = photo.heightPx * scale;
    const words = photo.caption === '' ? 'photo from the book' : photo.caption;
    const caption = paragraph(words, pens.textNote)({ x, y: y + height + 3, width });
    const picture = element('image', { x, y, width: photo.widthPx * scale, height, href: photo.data });
    return { svg: picture + caption.svg, height: height + 3 + caption.height };
  };
