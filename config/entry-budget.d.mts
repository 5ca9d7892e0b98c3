import type { Plugin } from 'vite';

/** Bytes of gzip that the call view's entry may take, its style sheets with it. */
export const CALL_BUDGET: number;
/** Bytes of gzip that the desk's entry JavaScript may take. */
export const DESK_BUDGET: number;
/** Fails a build over a budget. */
export function entryBudget(): Plugin;
