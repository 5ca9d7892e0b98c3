import { seededRandom } from '../../src/units/index.ts';
import { blur } from './blur.ts';

/** Fills a lattice with smooth chance of mean 0 and rms 1: white noise blurred over about `radius` cells. */
export function smoothNoise(data: Float32Array, width: number, height: number, radius: number, seed: number): void {
  white(data, seed);
  blur(data, width, height, radius);
  toUnitRms(data);
}

/**
 * Fills a lattice with waves of mean 0 and rms 1 between two lengths: white noise blurred over `short` cells less the same
 * blurred over `long` cells. The mean wave length is about 4 times √(short · long) cells.
 */
export function bandNoise(
  data: Float32Array,
  width: number,
  height: number,
  short: number,
  long: number,
  seed: number,
): void {
  white(data, seed);
  blur(data, width, height, short);
  const slow = data.slice();
  blur(slow, width, height, long);
  for (let i = 0; i < data.length; i++) data[i] -= slow[i];
  toUnitRms(data);
}

function white(data: Float32Array, seed: number): void {
  const random = seededRandom(seed);
  for (let i = 0; i < data.length; i++) data[i] = random.next() - 0.5;
}

function toUnitRms(data: Float32Array): void {
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < data.length; i++) {
    sum += data[i];
    squares += data[i] * data[i];
  }
  const mean = sum / data.length;
  const scale = 1 / Math.sqrt(squares / data.length - mean * mean);
  for (let i = 0; i < data.length; i++) data[i] = (data[i] - mean) * scale;
}
