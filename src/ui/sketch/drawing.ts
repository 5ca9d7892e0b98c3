/** A drawing as a node; its text was escaped where it was made, and markup that is not well formed is refused here. */
export function drawingOf(svg: string): Element {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (root.nodeName !== 'svg') throw new Error('The drawing is not well-formed SVG.');
  return root;
}
