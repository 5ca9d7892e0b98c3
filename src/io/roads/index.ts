export * from './read-roads.ts';
