export type { NamedText } from './plain-json.ts';
export * from './read-resources.ts';
