/** True in the long run (`npm run test:long`), which takes every count in full. */
const whole = process.env.BRINKBOOK_LONG === '1';

/** How often a long test repeats: `all` in the long run, else `some`; what it prints should say which of how many. */
export const repeats = (some: number, all: number): number => (whole ? all : some);
