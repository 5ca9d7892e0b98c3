import { UserError } from '../units/index.ts';

/** A person's sentence for what went wrong; a programmer's mistake is told as one, with what stands and what to do `then`. */
export function sentenceOf(error: unknown, then = 'Nothing was lost; move the point or reload the page.'): string {
  if (error instanceof UserError) return error.message;
  const what = error instanceof Error ? error.message : String(error);
  return `Something in the program failed (${what}). ${then}`;
}
