import { markPaths, placePaths, type SymbolPaths } from '../../plan/index.ts';
import type { Cut } from '../commands/stencil-cuts.ts';

/** Cuts that are no marks of the ground, drawn with the same pen. */
const others: Readonly<Record<'site' | 'spot', SymbolPaths>> = {
  site: { line: 'M12 2.4a9.6 9.6 0 1 0 0 19.2a9.6 9.6 0 0 0 0-19.2M3.1 8.4H8L19.5 18' },
  spot: { line: 'M8 21V6.5L9.6 3.5h4.8L16 6.5V21zM8 7.2h8M12 17v-6M10.2 12.8L12 11l1.8 1.8' },
};
const paths = { ...markPaths, ...others, 'landing zone': placePaths['landing zone'] };

/** The drawing of a cut, in the page's ink. */
export function MarkSymbol({ tool }: { readonly tool: Cut['tool'] }) {
  const { line, fine, dash, solid } = paths[tool];
  return (
    <svg className="mark-symbol" viewBox="0 0 24 24" aria-hidden="true">
      <path d={line} />
      {fine && <path className="fine" d={fine} />}
      {dash && <path className="dash" d={dash} />}
      {solid && <path className="solid" d={solid} />}
    </svg>
  );
}
