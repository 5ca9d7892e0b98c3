export * from './changed-since.ts';
export * from './contested-for-site.ts';
export * from './field-check.ts';
export * from './field-value.ts';
export * from './in-area.ts';
export * from './loose-ends.ts';
export { monthsLater } from './months-later.ts';
export * from './taken-here.ts';
export * from './worse-of-contested.ts';
