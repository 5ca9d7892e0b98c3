import type { MarkKind } from '../book/index.ts';

/** One symbol in a 24-unit box, optical centre at 12, 12: SVG path data by pen. */
export interface SymbolPaths {
  /** The main pen, 1.45 units wide. */
  readonly line: string;
  /** Two thirds of the main pen. */
  readonly fine?: string;
  /** The main pen, dashed. */
  readonly dash?: string;
  /** Filled: only where the thing itself is solid. */
  readonly solid?: string;
}

const disc = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;

/** The field book's marks, drawn once for every kind. */
export const markPaths: Readonly<Record<MarkKind, SymbolPaths>> = {
  tree: {
    line: 'M12 2.6c1.9 0 2.6 1.3 3.9 1.6s2.9.3 3.7 1.9.1 2.7.7 3.9 1.7 2 1.3 3.8-1.7 2.1-2.3 3.2-.7 2.7-2.3 3.3-2.7-.3-3.9.1-1.8 1.5-3.4 1.1-1.9-1.6-3-2.2-2.6-.5-3.3-2 .1-2.6-.3-3.8-1.6-2.1-1.2-3.7S3.8 7.8 4.4 6.7s.3-2.7 1.8-3.4 2.6.3 3.7-.1 1.1-.6 2.1-.6z',
    solid: disc(12, 12, 2.7),
  },
  rock: {
    line: 'M3.2 17.8 5.6 9.4l5.2-4.6 6.4 2.1 3.8 6.6-1.6 5.3z',
    fine: 'm5.6 9.4 6.1 3.5 5.5-6M11.7 12.9l-1.3 5.7',
  },
  pole: {
    line: 'M12 3v17.5M6.2 6.6h11.6M8.2 10h7.6M8.6 20.9h6.8',
    solid: disc(6.2, 6.6, 0.9) + disc(17.8, 6.6, 0.9),
  },
  wire: {
    line: 'M3.5 4.5v15M20.5 4.5v15M3.5 6.5c4 7.5 13 7.5 17 0',
    fine: 'M12 14.5v5.3M10.2 18l1.8 1.9 1.8-1.9',
  },
  gate: {
    line: `${disc(19.7, 17.5, 1.9)}M5.5 16 15 5.2`,
    dash: 'M15 5.2a14 14 0 0 1 4.6 10',
    solid: disc(4.3, 17.5, 1.9),
  },
  culvert: {
    line: 'M10 7.5 7.6 3.3M14 7.5l2.4-4.2M10 16.5l-2.4 4.2M14 16.5l2.4 4.2',
    fine: 'M2.5 7.5h19M2.5 16.5h19',
    dash: 'M10 7.8v8.4M14 7.8v8.4',
  },
  water: {
    line: 'M2.8 8.2c2.3-2.6 4.5-2.6 6.3 0s4 2.6 6 0 4-2.6 6.2 0M2.8 13.2c2.3-2.6 4.5-2.6 6.3 0s4 2.6 6 0 4-2.6 6.2 0',
    fine: 'M6.8 18.2c1.7-2.1 3.5-2.1 5.2 0s3.5 2.1 5.2 0',
  },
  turnout: {
    line: 'M2.5 16.8h3.8l2.6-5.4h6.2l2.6 5.4h3.8',
    fine: 'M2.5 6h19M12 14v5.5M9.9 17.5l2.1 2.2 2.1-2.2',
  },
  'firm ground': {
    line: 'M2.6 9.5h18.8',
    fine: 'M4.5 13.5h15M6.7 17.1h10.6M8.9 20.7h6.2',
    solid: 'M8.2 5h7.6v4.5h-7.6z',
  },
  'soft ground': {
    line: 'M2.6 8.5h4.2M17.2 8.5h4.2M6.8 8.5c.8 6.5 9.6 6.5 10.4 0',
    fine: 'M4.5 17h2.6M10.7 17h2.6M16.9 17h2.6M7.6 20.3h2.6M13.8 20.3h2.6',
  },
  barrier: {
    line: 'M2.5 8.2h19M2.5 11.6h19M6 11.8v8.2M12 11.8v8.2M18 11.8v8.2',
    fine: 'M2.5 9.9h19',
  },
  wall: {
    line: 'M2.5 5.5h8.7M11.2 5.5v15M11.2 20.5h10.3',
    fine: 'M8 8.3h3M7 11.3h4M8 14.3h3M7 17.3h4M14.5 7v9.5M12.7 14.7l1.8 1.9 1.8-1.9',
  },
  step: {
    line: 'M2.5 5.2 9.3 8.6V15.6l12.2 5.6',
    fine: 'M13 8.6h4.3M13 15.6h4.3M15.2 9.2v5.8',
  },
  sign: {
    line: 'M12 13.2v7.9M9.2 21.1h5.6M12 2.8 17.4 8 12 13.2 6.6 8z',
    fine: 'M10 8h4',
  },
  'radio dead spot': {
    line: 'M14.6 3v18M7 8.4a5 5 0 0 1 0 7.2M10 5.6a9 9 0 0 1 0 12.8',
    fine: 'M17.5 9.8l4 4.4M21.5 9.8l-4 4.4',
    solid: disc(4.2, 12, 1.5),
  },
  'patient point': {
    line: disc(12, 12, 8.7),
    solid: 'M12 12V3.3A8.7 8.7 0 0 1 20.7 12zM12 12v8.7A8.7 8.7 0 0 1 3.3 12z',
  },
};
