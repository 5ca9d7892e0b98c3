import { expect, test } from 'vitest';
import { nameSide } from '../../src/map/name-sides.ts';

test('a name stands on the one side where it is whole; on any where both or neither is', () => {
  expect(nameSide(40, 120, 310, 310)).toBe('right');
  expect(nameSide(119.9, 120, 310, 310)).toBe('right');
  expect(nameSide(120, 120, 310, 310)).toBeNull();
  expect(nameSide(200, 120, 310, 310)).toBe('left');
  expect(nameSide(100, 120, 200, 200)).toBeNull();
});

test('a site out of view has its name out of view; one under the keys has it where it is free', () => {
  expect(nameSide(-1, 120, 310, 390)).toBe('left');
  expect(nameSide(391, 120, 310, 390)).toBe('right');
  expect(nameSide(390, 120, 310, 390)).toBe('left');
});
