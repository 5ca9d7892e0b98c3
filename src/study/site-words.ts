import { compassWord, normaliseAzimuth } from '../units/index.ts';

/**
 * A side of the road in driving words: "downhill side, south, right when driving east". The side that lies toward azimuth
 * `sideAzimuthDeg` is on the right of whoever drives with it at their right hand, whatever the line's drawing.
 */
export function sideWords(sideAzimuthDeg: number, falls: boolean | null): string {
  const slope = falls === null ? 'side' : falls ? 'downhill side' : 'uphill side';
  const driving = compassWord(normaliseAzimuth(sideAzimuthDeg - 90));
  return `${slope}, ${compassWord(sideAzimuthDeg)}, right when driving ${driving}`;
}
