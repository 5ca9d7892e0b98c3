/** The policy of every page. */
export const pagePolicy: string;
/** The policy of the decoding worker's own answer. */
export const decodePolicy: string;
/** The policy for the answer to a request path. */
export function policyFor(path: string): string;
