import { describe, expect, it } from 'vitest';
import { sha256 } from '../../src/io/index.ts';
import { type ImageType, readExif, takePhoto } from '../../src/io/photos/index.ts';
import { seededRandom, UserError } from '../../src/units/index.ts';
import { exifBlock, sampleImages, secret } from '../helpers/sample-images.ts';

const types = Object.keys(sampleImages) as ImageType[];
const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

describe('a photo', () => {
  it.each(types)('%s tells its place, day and which way is up', (type) => {
    for (const little of [true, false]) {
      const bytes = sampleImages[type](exifBlock({ little, orientation: 6 }));
      expect(readExif(bytes, type)).toEqual({
        at: { lon: -128.0456, lat: 44.0123 },
        takenOn: '2026-05-03',
        orientation: 6,
      });
    }
  });

  it.each(types)('%s keeps its picture and loses everything else', async (type) => {
    const bytes = sampleImages[type](exifBlock({ little: true, orientation: 6 }));
    expect(text(bytes)).toContain(secret);
    const taken = await takePhoto(bytes, 'photo', null);
    expect(taken.at).toEqual({ lon: -128.0456, lat: 44.0123 });
    expect(taken.fields).toEqual({
      hash: await sha256(taken.bytes),
      type,
      widthPx: 20,
      heightPx: 30,
      sizeBytes: taken.bytes.length,
      takenOn: '2026-05-03',
    });
    for (const word of [secret, 'GPS', 'http', '2026:05:03', 'behind the end'])
      expect(text(taken.bytes)).not.toContain(word);
    expect(readExif(taken.bytes, type)).toEqual({
      at: null,
      takenOn: null,
      orientation: type === 'image/jpeg' ? 6 : 1,
    });
    expect(text(taken.bytes)).toContain('PICTURE');
    // Once more changes nothing: the same photo has the same hash.
    expect((await takePhoto(taken.bytes, 'photo', null)).fields.hash).toBe(taken.fields.hash);
  });

  it('goes through the shrinker where there is one', async () => {
    const small = sampleImages['image/jpeg'](exifBlock({ little: true, orientation: 6 }));
    const asked: number[] = [];
    const shrinker = {
      shrink: async (_bytes: Uint8Array, longestPx: number) => {
        asked.push(longestPx);
        return small;
      },
    };
    const taken = await takePhoto(
      sampleImages['image/png'](exifBlock({ little: false, orientation: 6 })),
      'p',
      shrinker,
    );
    expect(asked).toEqual([2000]);
    expect([taken.fields.type, taken.fields.widthPx, taken.fields.heightPx]).toEqual(['image/jpeg', 30, 20]);
    expect(taken.at).toEqual({ lon: -128.0456, lat: 44.0123 });
    expect(text(taken.bytes)).not.toContain(secret);
  });

  it.each([
    ['no picture', new TextEncoder().encode('<svg onload="x"/>'), /is no JPEG, PNG or WebP/],
    ['nothing', new Uint8Array(0), /is no JPEG, PNG or WebP/],
    [
      'half a picture',
      sampleImages['image/jpeg'](exifBlock({ little: true, orientation: 1 })).slice(0, 300),
      /is damaged/,
    ],
  ])('is refused where it is %s', async (_what, bytes, words) => {
    const error = await takePhoto(bytes as Uint8Array<ArrayBuffer>, 'photo.jpg', null).catch((cause: unknown) => cause);
    expect(error).toBeInstanceOf(UserError);
    expect((error as Error).message).toMatch(words);
  });

  it.each([
    ['a datum of long ago', { datum: 'TOKYO' }],
    ['a fraction over nothing', { below: 0 }],
    ['zeros', { lat: 0, lon: 0 }],
    ['a latitude over 90', { lat: 95 }],
    ['no letters', { letters: '' }],
  ])('has no place where its Exif has %s', (_what, change) => {
    const bytes = sampleImages['image/jpeg'](exifBlock({ little: true, orientation: 1, ...change }));
    expect(readExif(bytes, 'image/jpeg').at).toBeNull();
  });

  it('of which bytes were changed is read, or refused with a sentence: 6,000 times', async () => {
    const random = seededRandom(99);
    let taken = 0;
    for (let n = 0; n < 6000; n++) {
      const type = types[n % 3]!;
      const bytes = sampleImages[type](exifBlock({ little: n % 2 === 0, orientation: 3 }));
      for (let k = 0; k < 6; k++) bytes[Math.floor(random.next() * bytes.length)] = Math.floor(random.next() * 256);
      const cut = random.next() < 0.3 ? bytes.slice(0, Math.floor(random.next() * bytes.length)) : bytes;
      try {
        const { at, fields } = await takePhoto(cut, 'p', null);
        taken++;
        if (at) expect(Math.abs(at.lat) <= 90 && Math.abs(at.lon) <= 180).toBe(true);
        expect(fields.widthPx).toBeGreaterThan(0);
      } catch (error) {
        expect(error).toBeInstanceOf(UserError);
      }
    }
    expect(taken).toBeGreaterThan(500);
  });
});
