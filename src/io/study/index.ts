export * from './study-site.ts';
