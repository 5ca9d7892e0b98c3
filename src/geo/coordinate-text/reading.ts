import type { LonLat } from '../types.ts';

/** West, south, east and north in WGS 84 degrees; west over east means a box across the 180th meridian. */
export interface DistrictBounds {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** How a position was written. */
export type PositionForm =
  | 'decimal degrees'
  | 'degrees and minutes'
  | 'degrees, minutes and seconds'
  | 'US National Grid'
  | 'UTM'
  | 'geo address';

/**
 * Why a reading needs a person's word: latitude and longitude look swapped; a sign or a letter looks wrong or missing; the
 * place is outside the district; the text holds several places; it is written too coarsely; it is 0, 0, which devices send
 * when they have no fix.
 */
export type QuestionCode = 'swapped' | 'sign' | 'outside' | 'several' | 'coarse' | 'zero';

/** What to ask, in one sentence, and the position that was probably meant instead where there is one. */
export interface PositionQuestion {
  readonly code: QuestionCode;
  readonly sentence: string;
  readonly instead: LonLat | null;
}

/** A position as somebody wrote it: half the last written digit in metres, the form, and what to ask before using it. */
export interface PositionReading {
  readonly position: LonLat;
  readonly withinM: number;
  readonly form: PositionForm;
  /** Null where the reading may be taken as it is. */
  readonly question: PositionQuestion | null;
}

/** A reading before it is questioned. */
export interface Candidate {
  readonly position: LonLat;
  readonly withinM: number;
  readonly form: PositionForm;
  /** True where the writing alone shows that this is a position; false where it must be the whole text to count. */
  readonly strong: boolean;
  /** True where the text is nothing but this. */
  readonly whole: boolean;
  /** What made the reading doubtful by itself. */
  readonly doubt: 'swapped' | 'sign' | null;
}

/** Something that has the form of a position and names none: what is wrong, as the end of a sentence. */
export interface Fault {
  readonly fault: string;
}

export const isFault = (found: Candidate | Fault): found is Fault => 'fault' in found;
