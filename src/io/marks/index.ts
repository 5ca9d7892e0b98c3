export * from './read-marks.ts';
