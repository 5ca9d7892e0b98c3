import type { SupportPlaceRecord } from '../book/index.ts';
import type { SymbolPaths } from './mark-paths.ts';

/** Places for those who come, drawn with the pen of the marks. */
export const placePaths: Readonly<Record<SupportPlaceRecord['kind'], SymbolPaths>> = {
  'landing zone': { line: 'M2.8 7V2.8H7M17 2.8h4.2V7M21.2 17v4.2H17M7 21.2H2.8V17M12 9.4v5.2M9.4 12h5.2' },
  staging: { line: 'M2.8 7V2.8H7M17 2.8h4.2V7M21.2 17v4.2H17M7 21.2H2.8V17', fine: 'M6.5 9.5h11M6.5 14.5h11' },
  parking: { line: 'M4.5 3v18M12 3v18M19.5 3v18', fine: 'M4.5 21h15' },
};
