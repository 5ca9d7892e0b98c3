/** East and north of an arrow key, one step; null for any other key. */
export const arrowStep = (key: string): readonly [number, number] | null => arrows[key] ?? null;

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};
