import type { Plugin } from 'vite';

/** Vite plugin: fills the list of the app's files into the service worker. */
export function precache(): Plugin;
/** Changes with any source file below a folder. */
export function programOf(folder: string): string;
