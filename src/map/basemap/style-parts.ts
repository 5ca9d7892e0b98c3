import type { LayerSpecification, SourceSpecification, StyleSpecification } from 'maplibre-gl';
import { UserError } from '../../units/index.ts';
import { BASE, type BasemapParts } from './basemap.ts';

/**
 * What can be taken over from a foreign style: its sources, layers and icons under names of their own, addresses made whole.
 * Its text is drawn with the typefaces at hand, so no glyphs are fetched; its own terrain, sky and light stay out.
 */
export function partsOfStyle(style: unknown, url: string): BasemapParts {
  if (!isStyle(style)) {
    throw new UserError('basemap', `What ${url} holds is no map style; give the address of a MapLibre style (JSON).`);
  }
  const whole = (address: string): string =>
    // A template's braces must survive.
    new URL(address, url).href.replaceAll('%7B', '{').replaceAll('%7D', '}');
  const sources: Record<string, SourceSpecification> = {};
  for (const [name, source] of Object.entries(style.sources)) {
    if (source.type === 'raster-dem') continue;
    const { url: list, tiles } = source as { url?: string; tiles?: string[] };
    sources[BASE + name] = {
      ...source,
      ...(list ? { url: whole(list) } : {}),
      ...(tiles ? { tiles: tiles.map(whole) } : {}),
    } as SourceSpecification;
  }
  const layers = style.layers
    .filter((layer) => !('source' in layer) || sources[BASE + String(layer.source)])
    .map(
      (layer) =>
        ({
          ...layer,
          id: BASE + layer.id,
          ...('source' in layer ? { source: BASE + String(layer.source) } : {}),
        }) as LayerSpecification,
    );
  const sprite = typeof style.sprite === 'string' ? whole(style.sprite) : null;
  return { sources, layers, sprite, attribution: '' };
}

function isStyle(style: unknown): style is StyleSpecification {
  const { version, sources, layers } = (style ?? {}) as Partial<StyleSpecification>;
  return version === 8 && typeof sources === 'object' && sources !== null && Array.isArray(layers);
}
