import { type Editor, type OpenBook, openBook } from '../../store/index.ts';
import { mintId } from './mint-id.ts';
import { secondCopy } from './second-copy.ts';
import { tabChannel } from './tab-channel.ts';
import { webDisk } from './web-disk.ts';

/** A book of this origin, open in this page, with what ends it. */
export interface WebBook {
  readonly book: OpenBook;
  close(): Promise<void>;
}

/**
 * Opens the browser's book of a name. Other tabs are heard; a page that comes back from sleep reads anew; a page that goes writes the
 * plain snapshot. Rejects with a `UserError` where the browser keeps nothing.
 */
export async function openWebBook(name: string, editor: Editor): Promise<WebBook> {
  const disk = await webDisk(name);
  const channel = tabChannel(name);
  const book = await openBook(disk, { now: () => Date.now(), mintId, channel, copy: secondCopy(name) }, editor);
  // Neither may raise: the next edit tells what is wrong with the device.
  const leave = (): void => void book.settle().catch(() => undefined);
  const back = (): void => {
    if (document.visibilityState === 'visible') void book.refresh().catch(() => undefined);
    else leave();
  };
  addEventListener('pagehide', leave);
  addEventListener('pageshow', back);
  document.addEventListener('visibilitychange', back);
  return {
    book,
    close: async () => {
      removeEventListener('pagehide', leave);
      removeEventListener('pageshow', back);
      document.removeEventListener('visibilitychange', back);
      await book.close();
      channel.close();
    },
  };
}
