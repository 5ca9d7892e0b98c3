export * from './read-sites.ts';
