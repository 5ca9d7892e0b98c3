import type { Map as MapView } from 'maplibre-gl';

/** Image pixels for each pixel of the screen: sharp on a phone too. */
const PER_PX = 3;

/** Draws an image of the page's own and hands it to the map under `id`, in place of the one that had that name. */
export function putImage(
  map: MapView,
  id: string,
  width: number,
  height: number,
  draw: (pen: CanvasRenderingContext2D) => void,
): void {
  const canvas = document.createElement('canvas');
  canvas.width = width * PER_PX;
  canvas.height = height * PER_PX;
  const pen = canvas.getContext('2d')!;
  pen.scale(PER_PX, PER_PX);
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  draw(pen);
  const image = pen.getImageData(0, 0, canvas.width, canvas.height);
  if (map.hasImage(id)) map.updateImage(id, image);
  else map.addImage(id, image, { pixelRatio: PER_PX });
}
