import { expect, test } from 'vitest';
import { inFormWords } from '../../src/ui/notes/in-form-words.ts';

test.each([
  [
    'a.tif does not say where it is; give it with --crs EPSG:N.',
    'a.tif does not say where it is; give it with the coordinate system below.',
  ],
  ['a.tif is in feet; give --vertical-unit m, ft or us-ft.', 'a.tif is in feet; give the unit of its heights below.'],
  ['leave --crs out or correct the file.', 'leave the coordinate system below out or correct the file.'],
  ['a.tif is no TIFF.', 'a.tif is no TIFF.'],
])('%s', (said, shown) => expect(inFormWords(said)).toBe(shown));
