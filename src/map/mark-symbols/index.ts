export { markPaths, type SymbolPaths } from '../../plan/index.ts';
