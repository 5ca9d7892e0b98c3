/** Mean advance of the sans stack's figures and letters as a share of the size; generous, so that real text is shorter. */
const SANS = 0.55;
/** The same of the serif stack. */
const SERIF = 0.46;

/** Width of the widest line at a size, drawing units. */
export const textWidth = (lines: readonly string[], size: number): number =>
  Math.max(0, ...lines.map((words) => words.length)) * size * SANS;

/** Mean advance of running text at a size, drawing units. */
export const advance = (size: number, stack: 'sans' | 'serif'): number => size * (stack === 'sans' ? SANS : SERIF);
