export * from './calibrate.ts';
export * from './mile-at.ts';
export * from './place-of-mile.ts';
export * from './station-on-route.ts';
