import type { Draw } from './flow.ts';

/** Pieces beside one another; shares of the width less the gaps between them. */
export const columns =
  (draws: readonly Draw[], shares: readonly number[], gap: number): Draw =>
  ({ x, y, width }) => {
    const room = width - gap * (draws.length - 1);
    const sum = shares.reduce((all, share) => all + share, 0);
    let at = x;
    let svg = '';
    let height = 0;
    draws.forEach((draw, i) => {
      const own = (room * (shares[i] ?? 0)) / sum;
      const block = draw({ x: at, y, width: own });
      svg += block.svg;
      height = Math.max(height, block.height);
      at += own + gap;
    });
    return { svg, height };
  };
