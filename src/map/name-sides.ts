import type { Map as MapView } from 'maplibre-gl';
import type { MapSite, NameSide } from './district.ts';
import type { MapInk } from './ink.ts';
import { PHONE_BELOW_PX } from './phone-size.ts';
import { FIGURES_SCALE, NAME_OFFSET_PX, NAME_PX, nameZoom } from './style/site-layers.ts';

/** What the keys at the thumb of a phone cover in the corner below right, pixels; names stay clear of it. */
const PHONE_KEYS_PX = { width: 80, height: 236 };

/** Sites this far out of view are looked at too, pixels: their names would reach into it. */
const BEYOND_VIEW_PX = 240;

/**
 * The side that a name of `widthPx` has to itself at `x` of a map `mapPx` wide that is free from 0 to `freePx`; null where it fits on
 * both, or on neither. A site out of view has its name out of view, where it would be cut.
 */
export function nameSide(x: number, widthPx: number, freePx: number, mapPx: number): NameSide | null {
  if (x < 0 || x > mapPx) return x < 0 ? 'left' : 'right';
  const left = x - widthPx >= 0;
  const right = x + widthPx <= freePx;
  return left === right ? null : left ? 'left' : 'right';
}

/** The sides of names where the map does not cut them. */
export interface NameSides {
  /** Takes the sides of all names in view as the map looks now; true where one of them is another than before. */
  look(sites: readonly MapSite[], ink: MapInk): boolean;
  /** The sites with the sides last taken. */
  put(sites: readonly MapSite[]): readonly MapSite[];
}

export function nameSides(map: MapView, element: HTMLElement): NameSides {
  const pen = document.createElement('canvas').getContext('2d');
  const widths = new Map<string, number>();
  const sides = new Map<string, NameSide>();
  const widthOf = (font: string, words: string): number => {
    const key = `${font} ${words}`;
    let width = widths.get(key);
    if (width === undefined) {
      if (pen) pen.font = font;
      width = pen?.measureText(words).width ?? 0;
      widths.set(key, width);
    }
    return width;
  };
  return {
    look(sites, ink) {
      if (map.getZoom() < nameZoom(sites.length)) return false;
      const { clientWidth, clientHeight } = element;
      const keysTop = clientWidth < PHONE_BELOW_PX ? clientHeight - PHONE_KEYS_PX.height : Number.POSITIVE_INFINITY;
      const view = map.getBounds();
      const beyond = ((view.getEast() - view.getWest()) * BEYOND_VIEW_PX) / clientWidth;
      view.extend([view.getWest() - beyond, view.getSouth()]).extend([view.getEast() + beyond, view.getNorth()]);
      let changed = false;
      for (const { id, name, figures, lon, lat } of sites) {
        // A site farther out keeps its side: told anew, it would draw all sites again for nothing to be seen.
        if (!view.contains([lon, lat])) continue;
        const { x, y } = map.project([lon, lat]);
        const freePx = y > keysTop ? clientWidth - PHONE_KEYS_PX.width : clientWidth;
        const wide = Math.max(
          widthOf(`italic ${NAME_PX}px ${ink.words}`, name),
          widthOf(`${NAME_PX * FIGURES_SCALE}px ${ink.figures}`, figures ?? ''),
        );
        const side = nameSide(x, NAME_OFFSET_PX + wide, freePx, clientWidth);
        if (side === (sides.get(id) ?? null)) continue;
        changed = true;
        if (side) sides.set(id, side);
        else sides.delete(id);
      }
      return changed;
    },
    put: (sites) =>
      sites.map((site) => {
        const nameSide = sides.get(site.id);
        return nameSide ? { ...site, nameSide } : site;
      }),
  };
}
