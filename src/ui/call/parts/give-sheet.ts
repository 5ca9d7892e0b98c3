/**
 * Hands a sheet over as one HTML file: to the device's own way of sharing where that takes files, else as a download. A sharing
 * that the person calls off leaves nothing behind; one that the device refuses becomes a download.
 */
export async function giveSheet(name: string, html: string): Promise<void> {
  const file = new File([html], name, { type: 'text/html' });
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: name });
      return;
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return;
    }
  }
  download(file);
}

function download(file: File): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
