import { UserError } from '../units/index.ts';

/** A person's sentence for what went wrong; a programmer's mistake is told as one. */
export function sentenceOf(error: unknown): string {
  if (error instanceof UserError) return error.message;
  const what = error instanceof Error ? error.message : String(error);
  return `Something in the program failed (${what}). Nothing was lost; move the point or reload the page.`;
}
