/** The policy of every page. */
export const pagePolicy: string;
/** The page's policy as its own text carries it where no header can be sent. */
export const publishedPolicy: string;
/** The policy of the decoding worker's own answer. */
export const decodePolicy: string;
/** The policy for the answer to a request path. */
export function policyFor(path: string): string;
/** Origins beside the own that the page may ask, from a list with spaces or commas between; throws with one sentence. */
export function hostsOf(text: string | undefined): string[];
