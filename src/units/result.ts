import type { UserError } from './errors.ts';

/** A refusal is a value with a reason; `throw` is kept for broken files and programmer mistakes. */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: UserError };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const refuse = (error: UserError): Result<never> => ({ ok: false, error });
