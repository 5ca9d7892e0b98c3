import type { Plugin } from 'vite';

/** The entry's budget, bytes of gzip. */
export const CALL_BUDGET: number;
/** Vite plugin: weighs the call view's entry and fails the build where it is over its budget. */
export function callBudget(): Plugin;
