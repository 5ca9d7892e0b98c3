export * from './decode-pool.ts';
