import type { Feature, Position } from 'geojson';
import type { Roadside, RoadsidePiece, Side } from '../../study/index.ts';
import { toRadians } from '../../units/index.ts';
import { thinLine } from './thin-line.ts';

/** How a piece of roadside is drawn: by what to plan as, crossed where undecided, bare where nothing could be read. */
export const roadsideLooks = [
  'low',
  'steep',
  'high',
  'undecided-low',
  'undecided-steep',
  'undecided-high',
  'unread',
] as const;
export type RoadsideLook = (typeof roadsideLooks)[number];

/** Lines are drawn within this of what was measured, metres. */
const TOLERANCE_M = 0.15;
/** A piece with fewer metres than this has no word of its own. */
const WORD_FROM_M = 15;

/**
 * A stretch's roadside as GeoJSON. Lines, whose right side is always the outer one: `what` "edge" with `kind` ("drop", "bank",
 * "rise", "none"), `what` "band" with `look`. Points: `what` "word" with `words`, the class as people read it, and
 * `anchor`, the side of the word that lies at the point so that it stands outside the band.
 */
export function roadsideFeatures({ edges, band }: Roadside): Feature[] {
  return [
    ...edges.map(({ side, kind, line }) => lineFeature({ what: 'edge', kind }, side, line)),
    ...band.map((piece) => lineFeature({ what: 'band', look: lookOf(piece) }, piece.side, piece.line)),
    ...band.filter(({ line }) => line.length / 2 > WORD_FROM_M).map(wordFeature),
  ];
}

function lookOf({ planAs, undecided }: RoadsidePiece): RoadsideLook {
  if (planAs === null) return 'unread';
  return undecided ? `undecided-${planAs}` : planAs;
}

function lineFeature(properties: Record<string, string>, side: Side, line: Float64Array): Feature {
  const coordinates = thinLine(line, TOLERANCE_M);
  if (side === 'left') coordinates.reverse();
  return { type: 'Feature', properties, geometry: { type: 'LineString', coordinates } };
}

/** The word at the middle of a piece, on its outer side. */
function wordFeature({ planAs, undecided, side, line }: RoadsidePiece): Feature {
  const middle = 2 * (line.length >> 2);
  const at: Position = [line[middle]!, line[middle + 1]!];
  const along = (line.at(-2)! - line[0]!) * Math.cos(toRadians(at[1]!));
  const north = line.at(-1)! - line[1]!;
  const [east, up] = side === 'right' ? [north, -along] : [-north, along];
  const sideways = Math.abs(east) >= Math.abs(up);
  const anchor = sideways ? (east > 0 ? 'left' : 'right') : up > 0 ? 'bottom' : 'top';
  const words = planAs === null ? 'not read' : undecided ? `undecided, as ${planAs}` : planAs;
  return { type: 'Feature', properties: { what: 'word', words, anchor }, geometry: { type: 'Point', coordinates: at } };
}
