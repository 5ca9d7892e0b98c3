import type { PhotoShrinker } from '../ports.ts';

/** JPEG quality of a shrunk photo; judgement: 2000 pixels take about 0.5 MB. */
const QUALITY = 0.82;

/** Shrinks photos on a canvas off the screen; for a worker. Formats are those that the browser can show. */
export const canvasShrinker: PhotoShrinker = {
  async shrink(bytes, longestPx) {
    const whole = await createImageBitmap(new Blob([bytes]), { imageOrientation: 'from-image' }).catch(() => null);
    if (!whole) return null;
    try {
      const scale = Math.min(1, longestPx / Math.max(whole.width, whole.height));
      const canvas = new OffscreenCanvas(
        Math.max(1, Math.round(whole.width * scale)),
        Math.max(1, Math.round(whole.height * scale)),
      );
      const pen = canvas.getContext('2d', { alpha: false });
      if (!pen) return null;
      pen.imageSmoothingQuality = 'high';
      pen.drawImage(whole, 0, 0, canvas.width, canvas.height);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
      return new Uint8Array(await blob.arrayBuffer());
    } finally {
      whole.close();
    }
  },
};
