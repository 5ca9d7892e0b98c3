import { UserError } from '../../units/index.ts';

/** What went wrong, for the person at the screen. */
export function sentenceOf(error: unknown): string {
  if (error instanceof UserError) return error.message;
  return `Something in the program failed (${error instanceof Error ? error.message : String(error)}); what is kept is whole. Reload the page.`;
}
