import { startFilesWorker } from '../../src/workers/web/index.ts';
import { exifBlock, secret } from '../helpers/sample-images.ts';

const worker = startFilesWorker();

/** What came out of a photo that was taken in this browser. */
export interface TakenHere {
  readonly given: readonly [width: number, height: number, bytes: number];
  readonly fields: Readonly<Record<string, unknown>>;
  readonly at: { lon: number; lat: number } | null;
  readonly holdsSecret: boolean;
  readonly givenHeldSecret: boolean;
  /** Red and blue of a pixel near the top and one near the bottom. */
  readonly top: readonly [number, number];
  readonly bottom: readonly [number, number];
}

/** Draws a picture, red on its left and blue on its right, gives it a place and an orientation, and takes it. */
async function takeHere(width: number, height: number, orientation: number): Promise<TakenHere> {
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = '#f00';
  pen.fillRect(0, 0, width / 2, height);
  pen.fillStyle = '#00f';
  pen.fillRect(width / 2, 0, width / 2, height);
  const plain = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 })).arrayBuffer());
  const exif = exifBlock({ little: true, orientation });
  const head = [0xff, 0xe1, (exif.length + 8) >> 8, (exif.length + 8) & 255, 0x45, 0x78, 0x69, 0x66, 0, 0];
  const given = Uint8Array.from([...plain.subarray(0, 2), ...head, ...exif, ...plain.subarray(2)]);
  const taken = await worker.call('takePhoto', { file: new Blob([given]), name: 'photo.jpg' });
  const picture = await createImageBitmap(new Blob([taken.bytes]));
  const look = new OffscreenCanvas(picture.width, picture.height).getContext('2d')!;
  look.drawImage(picture, 0, 0);
  const colour = (y: number): [number, number] => {
    const { data } = look.getImageData(picture.width / 2, y, 1, 1);
    return [data[0]!, data[2]!];
  };
  const holds = (bytes: Uint8Array): boolean => new TextDecoder('latin1').decode(bytes).includes(secret);
  return {
    given: [width, height, given.length],
    fields: taken.fields,
    at: taken.at,
    holdsSecret: holds(taken.bytes),
    givenHeldSecret: holds(given),
    top: colour(4),
    bottom: colour(picture.height - 5),
  };
}

const refusal = (text: string): Promise<string> =>
  worker.call('takePhoto', { file: new Blob([text]), name: 'x.svg' }).then(
    () => 'taken',
    (error: Error) => error.message,
  );

/** A book file of nothing, made and read again in the worker; how many edits it has, and whether it was refused when cut. */
async function bookHere(): Promise<{ edits: number | null; cut: string }> {
  const asked = { crashes: true, patientPhotos: true };
  const { bytes } = await worker.call('writeBook', {
    updates: [],
    photos: new Map(),
    asked,
    content: 'whole',
    writtenAtMs: 1,
  });
  const { updates } = await worker.call('readBook', { file: new Blob([bytes]), name: 'a.brinkbook' });
  const cut = worker.call('readBook', { file: new Blob([bytes.slice(0, 200)]), name: 'a.brinkbook' }).then(
    () => 'read',
    (error: Error) => error.message,
  );
  return { edits: updates?.length ?? null, cut: await cut };
}

const files = { takeHere, refusal, bookHere };
export type FilesPage = Window & { readonly files: typeof files };
Object.assign(window, { files });
