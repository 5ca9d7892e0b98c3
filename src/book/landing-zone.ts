import { FOOT_M } from '../units/index.ts';

/** Side of the free square that a helicopter is asked to land in, metres (faa-aim-10-2-3: 100 ft; by night 125 ft, the cautious end). */
export const landingZoneSideM = { day: 100 * FOOT_M, night: 125 * FOOT_M } as const;

/** When a landing zone of these sides (metres) is too small: by day and so always, by night, or never; null where a side is not known. */
export function landingZoneShort(sides: {
  readonly lengthM: number | null;
  readonly widthM: number | null;
}): 'day' | 'night' | 'never' | null {
  const { lengthM, widthM } = sides;
  if (lengthM === null || widthM === null) return null;
  const least = Math.min(lengthM, widthM);
  if (least < landingZoneSideM.day) return 'day';
  return least < landingZoneSideM.night ? 'night' : 'never';
}
