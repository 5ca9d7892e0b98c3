import { UserError } from '../../units/index.ts';
import { BASE, type Basemap, type BasemapParts } from './basemap.ts';
import { partsOfStyle } from './style-parts.ts';
import { openTileFile } from './tile-file.ts';

/** Makes a basemap ready. Throws `UserError` with one sentence where its address or its file cannot be used. */
export async function loadBasemap(basemap: Basemap, signal: AbortSignal): Promise<BasemapParts> {
  if (basemap.kind === 'file') return openTileFile(basemap.file, basemap.attribution ?? '');
  const address = webAddress(basemap.url);
  if (basemap.kind === 'style') return partsOfStyle(await fetchStyle(address, signal), address);
  if (!['{z}', '{x}', '{y}'].every((part) => basemap.url.includes(part))) {
    throw new UserError(
      'basemap',
      `"${basemap.url}" is no tile address: it must hold {z}, {x} and {y}; copy it from the page of whoever offers the map.`,
    );
  }
  if (basemap.attribution.trim() === '') {
    throw new UserError('basemap', 'Say whose map it is: the words that its maker wants to see beside it.');
  }
  const id = `${BASE}tiles`;
  return {
    sources: {
      [id]: { type: 'raster', tiles: [basemap.url], tileSize: 256, maxzoom: basemap.maxZoom ?? 19 },
    },
    layers: [{ id, type: 'raster', source: id }],
    sprite: null,
    attribution: basemap.attribution,
  };
}

function webAddress(text: string): string {
  const found = URL.canParse(text, location.href) ? new URL(text, location.href) : null;
  if (found && /^https?:$/.test(found.protocol)) return found.href;
  throw new UserError('basemap', `"${text}" is no web address; it must begin with https://.`);
}

async function fetchStyle(url: string, signal: AbortSignal): Promise<unknown> {
  let answer: Response;
  try {
    answer = await fetch(url, { signal });
  } catch (cause) {
    signal.throwIfAborted();
    throw new UserError(
      'basemap',
      `The basemap at ${url} cannot be reached: no signal, or this copy of Brinkbook may not ask that host.`,
      { cause },
    );
  }
  if (!answer.ok) throw new UserError('basemap', `The basemap at ${url} answered ${answer.status}; check its address.`);
  try {
    return await answer.json();
  } catch (cause) {
    throw new UserError('basemap', `What ${url} holds is no map style; give the address of a MapLibre style (JSON).`, {
      cause,
    });
  }
}
