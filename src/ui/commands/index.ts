export * from './command.ts';
export { deskCommands } from './desk-commands.ts';
export { KeyList } from './KeyList.tsx';
export * from './stencil-cuts.ts';
export { useKeys } from './use-keys.ts';
