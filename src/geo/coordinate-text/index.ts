export { isInsideBounds } from './bounds.ts';
export { parsePosition } from './parse-position.ts';
export type {
  DistrictBounds,
  PositionForm,
  PositionQuestion,
  PositionReading,
  QuestionCode,
} from './reading.ts';
