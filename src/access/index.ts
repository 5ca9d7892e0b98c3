export * from './road-order.ts';
export * from './roads-around.ts';
export * from './up-slope.ts';
