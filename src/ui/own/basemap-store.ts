import { create } from 'zustand';
import type { Basemap } from '../../map/index.ts';

const KEY = 'brinkbook-basemap';

/** The map that lies under the own one, null for none. An address is remembered on this device, a file is not. */
export const useBasemap = create<{ readonly basemap: Basemap | null }>()(() => ({ basemap: remembered() }));

/** Puts a map under the own one, or takes it away. */
export function setBasemap(basemap: Basemap | null): void {
  useBasemap.setState({ basemap });
  try {
    if (basemap === null || basemap.kind === 'file') localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify(basemap));
  } catch {
    // No storage: it holds for this visit.
  }
}

function remembered(): Basemap | null {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Basemap | null;
    return found && (found.kind === 'style' || found.kind === 'raster') && typeof found.url === 'string' ? found : null;
  } catch {
    return null;
  }
}
