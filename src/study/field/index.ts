export * from './apply-field.ts';
export { edgeOut } from './computed-values.ts';
export * from './field-inputs.ts';
export * from './field-of-book.ts';
export * from './field-part.ts';
export * from './field-warnings.ts';
export * from './reading-sigma.ts';
export * from './straight-limit.ts';
