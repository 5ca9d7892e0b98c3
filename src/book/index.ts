export * from './angle-rules.ts';
export * from './fleet.ts';
export * from './kit.ts';
export * from './marks.ts';
export * from './rate-table.ts';
export * from './rates.ts';
export * from './response.ts';
export * from './stations.ts';
