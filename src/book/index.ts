export * from './angle-rules.ts';
export * from './marks.ts';
