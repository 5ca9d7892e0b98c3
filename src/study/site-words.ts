import { compassWord, normaliseAzimuth } from '../units/index.ts';

/**
 * A side of the road in driving words: "downhill side, south, right when driving east". The side that lies toward azimuth
 * `sideAzimuthDeg` is on the right of whoever drives with it at their right hand, whatever the line's drawing.
 */
export function sideWords(sideAzimuthDeg: number, falls: boolean | null): string {
  const toward = compassWord(sideAzimuthDeg);
  const driving = `right when driving ${compassWord(normaliseAzimuth(sideAzimuthDeg - 90))}`;
  return falls === null ? `${toward} side, ${driving}` : `${falls ? 'downhill' : 'uphill'} side, ${toward}, ${driving}`;
}
