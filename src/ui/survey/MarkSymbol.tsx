import { markPaths } from '../../plan/index.ts';
import type { Cut } from '../commands/stencil-cuts.ts';

/** Cuts that are no marks of the ground, drawn with the same pen. */
const others = {
  site: { line: 'M12 2.4a9.6 9.6 0 1 0 0 19.2a9.6 9.6 0 0 0 0-19.2M3.1 8.4H8L19.5 18', solid: undefined },
  spot: { line: 'M8 21V6.5L9.6 3.5h4.8L16 6.5V21zM8 7.2h8M12 17v-6M10.2 12.8L12 11l1.8 1.8', solid: undefined },
  'landing zone': {
    line: 'M2.8 7V2.8H7M17 2.8h4.2V7M21.2 17v4.2H17M7 21.2H2.8V17M12 9.4v5.2M9.4 12h5.2',
    solid: undefined,
  },
} as const;

/** The drawing of a cut, in the page's ink. */
export function MarkSymbol({ tool }: { readonly tool: Cut['tool'] }) {
  const own = tool === 'site' || tool === 'spot' || tool === 'landing zone';
  const { line, fine, dash, solid } = own ? { fine: undefined, dash: undefined, ...others[tool] } : markPaths[tool];
  return (
    <svg className="mark-symbol" viewBox="0 0 24 24" aria-hidden="true">
      <path d={line} />
      {fine && <path className="fine" d={fine} />}
      {dash && <path className="dash" d={dash} />}
      {solid && <path className="solid" d={solid} />}
    </svg>
  );
}
