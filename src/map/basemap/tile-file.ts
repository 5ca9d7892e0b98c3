import { addProtocol, type LayerSpecification } from 'maplibre-gl';
import { FileSource, PMTiles, type Protocol, Protocol as TileProtocol, TileType } from 'pmtiles';
import { UserError } from '../../units/index.ts';
import { BASE, type BasemapParts } from './basemap.ts';

let protocol: Protocol | null = null;

/** Opens a PMTiles file from this machine: raster tiles as they are, vector tiles in plain lines and areas. */
export async function openTileFile(file: File, attribution: string): Promise<BasemapParts> {
  const archive = new PMTiles(new FileSource(file));
  let header: Awaited<ReturnType<PMTiles['getHeader']>>;
  let metadata: unknown;
  try {
    header = await archive.getHeader();
    metadata = await archive.getMetadata();
  } catch (cause) {
    throw new UserError(
      'basemap',
      `${file.name} is no PMTiles file of version 3, or it is cut off; choose another one.`,
      {
        cause,
      },
    );
  }
  if (!protocol) {
    protocol = new TileProtocol();
    addProtocol('pmtiles', protocol.tile);
  }
  protocol.add(archive);
  const { vector_layers, attribution: said } = (metadata ?? {}) as {
    vector_layers?: { id: string }[];
    attribution?: string;
  };
  const id = `${BASE}file`;
  const url = `pmtiles://${file.name}`;
  const whose = attribution || said || `From ${file.name}, which does not say whose data it holds`;
  if (header.tileType === TileType.Mvt) {
    return {
      sources: { [id]: { type: 'vector', url } },
      layers: plainLayers(
        id,
        (vector_layers ?? []).map((layer) => layer.id),
      ),
      sprite: null,
      attribution: whose,
    };
  }
  return {
    sources: { [id]: { type: 'raster', url, tileSize: 256 } },
    layers: [{ id, type: 'raster', source: id }],
    sprite: null,
    attribution: whose,
  };
}

const PLAIN = '#8a8577';
const WATER = '#7fa3b8';

/** Areas as faint tints, lines as thin strokes, points by name: whatever a file's layers are called. */
function plainLayers(source: string, names: readonly string[]): LayerSpecification[] {
  const color = (name: string): string => (/water|ocean|river|lake/i.test(name) ? WATER : PLAIN);
  const of = <T extends object>(name: string, part: string, rest: T) => ({
    id: `${BASE}${part}:${name}`,
    source,
    'source-layer': name,
    ...rest,
  });
  const shape = (type: 'Polygon' | 'LineString' | 'Point') => ['==', ['geometry-type'], type] as never;
  return [
    ...names.map((name) =>
      of(name, 'area', {
        type: 'fill' as const,
        filter: shape('Polygon'),
        paint: { 'fill-color': color(name), 'fill-opacity': color(name) === WATER ? 0.35 : 0.1 },
      }),
    ),
    ...names.map((name) =>
      of(name, 'line', {
        type: 'line' as const,
        filter: shape('LineString'),
        paint: { 'line-color': color(name), 'line-width': 0.9 },
      }),
    ),
    ...names.map((name) =>
      of(name, 'name', {
        type: 'symbol' as const,
        filter: ['all', shape('Point'), ['has', 'name']] as never,
        layout: { 'text-field': ['get', 'name'] as never, 'text-size': 12, 'text-font': ['sans-serif'] },
        paint: { 'text-color': PLAIN, 'text-halo-color': '#ffffff', 'text-halo-width': 1 },
      }),
    ),
  ];
}
