import { element } from '../svg.ts';
import { type Draw, heightOf, paragraph } from './flow.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { SheetPhoto } from './sheet-types.ts';

/** Photos on paper take no more height than this, and with less than the least there is nothing to be seen. */
const MOST_HEIGHT = 130;
const LEAST_HEIGHT = 45;

/** The first photo that lies in the sheet itself, with its caption, in at most so much height; others would take the card's room. */
export const photoRow =
  (photos: readonly SheetPhoto[], mostHeight = MOST_HEIGHT): Draw =>
  ({ x, y, width }) => {
    const photo = photos.find(({ data }) => /^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/=]+$/u.test(data));
    if (!photo) return { svg: '', height: 0 };
    const words = photo.caption === '' ? 'photo from the book' : photo.caption;
    const told = paragraph(words, pens.textNote);
    const room = Math.min(MOST_HEIGHT, mostHeight - heightOf(told, width) - 3);
    if (room < LEAST_HEIGHT) return paragraph('Photo: in the book.', pens.textNote)({ x, y, width });
    const scale = Math.min(width / photo.widthPx, room / photo.heightPx);
    const height = photo.heightPx * scale;
    const caption = told({ x, y: y + height + 3, width });
    const picture = element('image', { x, y, width: photo.widthPx * scale, height, href: photo.data });
    return { svg: picture + caption.svg, height: height + 3 + caption.height };
  };
