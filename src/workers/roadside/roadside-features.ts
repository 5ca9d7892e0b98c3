import type { Feature, Position } from 'geojson';
import type { Roadside, Side } from '../../study/index.ts';

/** How a piece of roadside is drawn: by what to plan as, crossed where undecided, bare where nothing could be read. */
export type RoadsideLook = 'low' | 'steep' | 'high' | 'undecided-low' | 'undecided-steep' | 'undecided-high' | 'unread';

/**
 * A stretch's roadside as GeoJSON lines whose right side is always the outer one. Properties: `what` "edge" with `kind`
 * ("drop", "bank", "rise", "none"), or `what` "band" with `look` and `words`, the class as people read it.
 */
export function roadsideFeatures({ edges, band }: Roadside): Feature[] {
  return [
    ...edges.map(({ side, kind, line }) => feature({ what: 'edge', kind }, side, line)),
    ...band.map(({ side, planAs, undecided, line }) => {
      const look: RoadsideLook = planAs === null ? 'unread' : undecided ? `undecided-${planAs}` : planAs;
      const words = planAs === null ? 'not read' : undecided ? `undecided, as ${planAs}` : planAs;
      return feature({ what: 'band', look, words }, side, line);
    }),
  ];
}

function feature(properties: Record<string, string>, side: Side, line: Float64Array): Feature {
  const coordinates: Position[] = [];
  for (let i = 0; i + 1 < line.length; i += 2) coordinates.push([line[i]!, line[i + 1]!]);
  if (side === 'left') coordinates.reverse();
  return { type: 'Feature', properties, geometry: { type: 'LineString', coordinates } };
}
