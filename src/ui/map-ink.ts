import type { MapInk } from '../map/index.ts';

/** The map's ink from the page's tokens as they stand now. */
export function readMapInk(): MapInk {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    night: document.documentElement.dataset.light === 'night',
    paper: token('paper'),
    leaf: token('leaf'),
    ink: token('ink'),
    ink2: token('ink-2'),
    rule: token('rule'),
    accent: token('accent'),
    water: token('water'),
    wood: token('wood'),
    contour: token('contour'),
    contour2: token('contour-2'),
    contourText: token('contour-text'),
    low: token('low'),
    steep: token('steep'),
    high: token('high'),
    words: token('words'),
    figures: token('figures'),
  };
}
