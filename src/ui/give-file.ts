/** Gives a person a file under a name, by the browser's own way of saving. */
export function giveFile(name: string, content: BlobPart, type: string): void {
  download(new File([content], name, { type }));
}

/**
 * Hands a file over: to the device's own way of sharing where that takes it, else as a download. A sharing that the person calls
 * off leaves nothing behind; one that the device refuses becomes a download. Tells which of them it became.
 */
export async function handOver(
  name: string,
  content: BlobPart,
  type: string,
): Promise<'shared' | 'downloaded' | 'called off'> {
  const file = new File([content], name, { type });
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: name });
      return 'shared';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'called off';
    }
  }
  download(file);
  return 'downloaded';
}

function download(file: File): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = file.name;
  link.click();
  // The browser has taken hold of it by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
