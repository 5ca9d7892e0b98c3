/**
 * The plain book in a second place of this origin, for readers whose database the browser has emptied. One file a book's name, there
 * whole or not at all. Knows nothing of the merge.
 */
const place = async (name: string): Promise<FileSystemDirectoryHandle> =>
  (await navigator.storage.getDirectory()).getDirectoryHandle(`${name}-snapshot`, { create: true });

const FILE = 'book.json';

/** Keeps the text of a plain book. */
export async function keepSnapshot(name: string, text: string): Promise<void> {
  const stream = await (await (await place(name)).getFileHandle(FILE, { create: true })).createWritable();
  await stream.write(text);
  await stream.close();
}

/** The text kept last; null where there is none or the browser has no such place. */
export async function keptSnapshot(name: string): Promise<string | null> {
  try {
    const text = await (await (await (await place(name)).getFileHandle(FILE)).getFile()).text();
    return text === '' ? null : text;
  } catch {
    return null;
  }
}
