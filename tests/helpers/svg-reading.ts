import { DOMParser, type Element } from '@xmldom/xmldom';

/** A drawing's root; throws where the text is not well formed. */
export function readSvg(svg: string): Element {
  const document = new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(svg, 'image/svg+xml');
  return document.documentElement!;
}

export const elementsOf = (root: Element, name: string): Element[] => [...root.getElementsByTagName(name)];

/** Elements of a name whose class holds every given word. */
export const ofClass = (root: Element, name: string, ...words: string[]): Element[] =>
  elementsOf(root, name).filter((each) => {
    const classes = (each.getAttribute('class') ?? '').split(' ');
    return words.every((word) => classes.includes(word));
  });

/** Coordinates of a path made of M and L alone, x, y flat. */
export const coordinates = (path: Element): number[] =>
  [...(path.getAttribute('d') ?? '').matchAll(/-?\d+(?:\.\d+)?/g)].map(([figure]) => Number(figure));

/** A text's corners, turned as it is drawn, at a narrow estimate of its width; page units. */
export function textCorners(element: Element): [number, number][] {
  const figure = (name: string): number => Number(element.getAttribute(name) ?? 0);
  const size = figure('font-size');
  const width = (element.textContent ?? '').length * size * 0.5;
  const anchor = element.getAttribute('text-anchor');
  const x0 = figure('x') - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
  const [y0, y1] = [figure('y') - size * 0.75, figure('y') + size * 0.15];
  const corners: [number, number][] = [
    [x0, y0],
    [x0 + width, y0],
    [x0 + width, y1],
    [x0, y1],
  ];
  const turn = /rotate\((\S+) (\S+) (\S+)\)/.exec(element.getAttribute('transform') ?? '');
  if (!turn) return corners;
  const [deg, cx, cy] = turn.slice(1).map(Number) as [number, number, number];
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return corners.map(([x, y]) => [cx + (x - cx) * c - (y - cy) * s, cy + (x - cx) * s + (y - cy) * c]);
}

/** Whether two convex outlines share ground (separating axes). */
export function outlinesMeet(a: readonly [number, number][], b: readonly [number, number][]): boolean {
  for (const outline of [a, b]) {
    for (let i = 0; i < outline.length; i++) {
      const [px, py] = outline[i];
      const [qx, qy] = outline[(i + 1) % outline.length];
      const [nx, ny] = [qy - py, px - qx];
      const span = (points: readonly [number, number][]): [number, number] => {
        const along = points.map(([x, y]) => x * nx + y * ny);
        return [Math.min(...along), Math.max(...along)];
      };
      const [a0, a1] = span(a);
      const [b0, b1] = span(b);
      if (a1 <= b0 || b1 <= a0) return false;
    }
  }
  return true;
}
