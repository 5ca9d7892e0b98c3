import { FOOT_M } from '../units/index.ts';
import { roundUpMph } from './posted-speed.ts';

/** From here up the taper grows with the speed, not its square, mph. */
const FAST_MPH = 45;

/**
 * Length of a merging taper, metres: W S² / 60 feet up to 40 mph, W S from 45, speeds between rounded up
 * [source: mutcd-2003, table 6H-4].
 *
 * @param mph posted speed
 * @param offsetM width that traffic is moved by
 */
export function mergingTaperM(mph: number, offsetM: number): number {
  const speed = roundUpMph(mph);
  const offsetFt = offsetM / FOOT_M;
  return (speed >= FAST_MPH ? offsetFt * speed : (offsetFt * speed * speed) / 60) * FOOT_M;
}

/** Length of a shoulder taper, metres: a third of a merging one [source: mutcd-2003, table 6H-4]. */
export const shoulderTaperM = (mph: number, offsetM: number): number => mergingTaperM(mph, offsetM) / 3;

/** Shortest and longest taper where one lane serves both directions in turn, metres [source: mutcd-2003, 6C.08]. */
export const oneLaneTaperM: readonly [number, number] = [50 * FOOT_M, 100 * FOOT_M];
