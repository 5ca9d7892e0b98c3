/** The writer of what a person's own files brought into the book of their district. */
export const FILES = 'files';

/** The writer of what a demo lacked that an earlier version began; a random part follows. */
export const LATER_DEMO = 'demo-later';

/** True for the writers of the demo's book file. */
export const isOfDemo = (actor: string): boolean => /^demo(-|$)/.test(actor);

/** True for writers whose updates came with a district's files: nobody's work is lost with them. */
export const isBrought = (actor: string): boolean => actor === FILES || isOfDemo(actor);
