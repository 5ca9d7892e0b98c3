export * from './angle.ts';
export * from './errors.ts';
export * from './force.ts';
export * from './format.ts';
export * from './length.ts';
export * from './random.ts';
export * from './result.ts';
