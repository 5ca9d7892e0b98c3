import type { Map as MapView } from 'maplibre-gl';
import type { MapSite, NameSide } from './district.ts';
import type { MapInk } from './ink.ts';
import { PHONE_BELOW_PX } from './phone-size.ts';
import { FIGURES_SCALE, NAME_OFFSET_PX, NAME_PX, nameZoom } from './style/site-layers.ts';

/** What the keys at the thumb of a phone cover in the corner below right, pixels; names stay clear of it. */
const PHONE_KEYS_PX = { width: 80, height: 236 };

/**
 * The side that a name of `widthPx` has to itself at `x` of a map that is free from 0 to `freePx`; null where it fits on both, or on
 * neither.
 */
export function nameSide(x: number, widthPx: number, freePx: number): NameSide | null {
  const left = x - widthPx >= 0;
  const right = x + widthPx <= freePx;
  return left === right ? null : left ? 'left' : 'right';
}

/** Puts names on the side where the map does not cut them, as it looks now. */
export function nameSides(map: MapView, element: HTMLElement) {
  const pen = document.createElement('canvas').getContext('2d');
  const widths = new Map<string, number>();
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
  return (sites: readonly MapSite[], ink: MapInk): readonly MapSite[] => {
    if (map.getZoom() < nameZoom(sites.length)) return sites;
    const { clientWidth, clientHeight } = element;
    const keysTop = clientWidth < PHONE_BELOW_PX ? clientHeight - PHONE_KEYS_PX.height : Number.POSITIVE_INFINITY;
    return sites.map((site) => {
      const { x, y } = map.project([site.lon, site.lat]);
      if (x < 0 || x > clientWidth) return site;
      const freePx = y > keysTop ? clientWidth - PHONE_KEYS_PX.width : clientWidth;
      const name = widthOf(`italic ${NAME_PX}px ${ink.words}`, site.name);
      const figures = widthOf(`${NAME_PX * FIGURES_SCALE}px ${ink.figures}`, site.figures ?? '');
      const side = nameSide(x, NAME_OFFSET_PX + Math.max(name, figures), freePx);
      return side ? { ...site, nameSide: side } : site;
    });
  };
}
