import { formatDecimalDegrees } from '../texts/degrees.ts';
import type { LonLat } from '../types.ts';
import { isInsideBounds, nearestInside, roughM } from './bounds.ts';
import type { Chosen } from './choose.ts';
import type { DistrictBounds, PositionQuestion } from './reading.ts';

/** Half the last written digit over which the place must be confirmed, metres; practice, no source: a bend of a road. */
const COARSE_M = 250;

/** What a person must be asked before a reading is used; null where it may be taken as it is. */
export function questionOf({ candidate, others }: Chosen, bounds: DistrictBounds | null): PositionQuestion | null {
  const { position, doubt, withinM } = candidate;
  if (bounds && !isInsideBounds(position, bounds)) return outside(position, bounds, doubt === 'swapped');
  if (doubt === 'swapped') {
    return ask(
      'swapped',
      `The longitude was written first: is ${formatDecimalDegrees(position)} (latitude, longitude) the place?`,
    );
  }
  if (position.lat === 0 && position.lon === 0) {
    return ask('zero', 'This is 0, 0, which devices send when they have no fix: is it the place?');
  }
  if (others.length > 0) {
    const list = others.slice(0, 3).map((other) => formatDecimalDegrees(other));
    const more = others.length > 3 ? ` and ${others.length - 3} more` : '';
    return {
      code: 'several',
      sentence: `The text names ${others.length + 1} places; taken is ${formatDecimalDegrees(position)}, also named ${list.join('; ')}${more}: which is it?`,
      instead: others[0]!,
    };
  }
  if (doubt === 'sign') {
    return ask('sign', `A minus stands with S or W: is ${formatDecimalDegrees(position)} the place?`);
  }
  if (withinM > COARSE_M) {
    return ask('coarse', `This names a place only to about ${distance(withinM)} either way: where in it?`);
  }
  return null;
}

const ask = (code: PositionQuestion['code'], sentence: string): PositionQuestion => ({ code, sentence, instead: null });

function outside(position: LonLat, bounds: DistrictBounds, wasSwapped: boolean): PositionQuestion {
  const written = formatDecimalDegrees(position);
  const { lon, lat } = position;
  const turned: readonly [PositionQuestion['code'], string, LonLat][] = [
    ['sign', 'with the other sign of the longitude', { lon: -lon, lat }],
    ['sign', 'with the other sign of the latitude', { lon, lat: -lat }],
    ['sign', 'with both signs turned', { lon: -lon, lat: -lat }],
    ['swapped', 'with latitude and longitude swapped', { lon: lat, lat: lon }],
    ['swapped', 'swapped and with a minus before the longitude', { lon: -lat, lat: lon }],
    ['swapped', 'swapped and with the other sign of the latitude', { lon: lat, lat: -lon }],
    ['swapped', 'swapped and with both signs turned', { lon: -lat, lat: -lon }],
  ];
  const meant = turned.find(([, , at]) => isInsideBounds(at, bounds));
  if (meant) {
    const [code, how, instead] = meant;
    const sentence = `${written} lies outside the district; ${how}, ${formatDecimalDegrees(instead)} lies inside: which is meant?`;
    return { code, sentence, instead };
  }
  const away = distance(roughM(position, nearestInside(position, bounds)));
  const sentence = `${written}${wasSwapped ? ' (longitude was written first)' : ''} lies outside the district, about ${away} away: is it the place?`;
  return ask('outside', sentence);
}

const distance = (m: number): string => (m < 1000 ? `${Math.ceil(m / 10) * 10} m` : `${Math.ceil(m / 1000)} km`);
