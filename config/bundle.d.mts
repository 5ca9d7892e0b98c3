/** Folder of the repository, with a slash at its end. */
export const root: string;
/** Path of the bundled module for an entry of the repository. */
export function bundle(entry: string, sources?: readonly string[]): Promise<string>;
/** Newest modification time, ms, of a file or of the files below a folder. */
export function newest(path: string): number;
