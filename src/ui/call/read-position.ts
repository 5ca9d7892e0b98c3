import { type DistrictBounds, type PositionReading, parsePosition } from '../../geo/index.ts';
import type { Result } from '../../units/index.ts';

/** Reads a position in any usual form; loaded when something is typed, for its grids take a projection library. */
export const readPosition = (text: string, bounds: DistrictBounds): Result<PositionReading> =>
  parsePosition(text, { bounds });
