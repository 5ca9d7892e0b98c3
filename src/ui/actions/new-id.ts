/** A random id for a record, its first letter told by the caller. */
export const newId = (prefix: string): string => `${prefix}-${crypto.randomUUID().slice(0, 18)}`;
