/** A place on the screen, pixels, x to the right and y down. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** A box on the screen, pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A label: its size, pixels, and where its middle may stand, best first; with no such place it is not shown. */
export interface LabelWish {
  readonly width: number;
  readonly height: number;
  readonly middles: readonly Pixel[];
}

export const boxAbout = ({ x, y }: Pixel, width: number, height = width): Box => ({
  left: x - width / 2,
  top: y - height / 2,
  right: x + width / 2,
  bottom: y + height / 2,
});

/**
 * Where each label's box stands, the first in the list choosing first: over no other label and nothing of `taken`; null where there is
 * no room for it.
 */
export function placeLabels(wishes: readonly LabelWish[], taken: readonly Box[]): (Box | null)[] {
  const full = [...taken];
  return wishes.map(({ width, height, middles }) => {
    const boxes = middles.map((middle) => boxAbout(middle, width, height));
    const free = boxes.find((box) => !full.some((other) => overlap(box, other))) ?? null;
    if (free) full.push(free);
    return free;
  });
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Middles about an outline of four corners from the rear left one round: on it, before and behind it, beside it. */
export function middlesAbout(outline: readonly Pixel[], width: number, height: number): Pixel[] {
  const [rearLeft, frontLeft, frontRight, rearRight] = outline as [Pixel, Pixel, Pixel, Pixel];
  const middle = halfway(rearLeft, frontRight);
  const sides: readonly [Pixel, Pixel][] = [
    [frontLeft, frontRight],
    [rearLeft, rearRight],
    [rearLeft, frontLeft],
    [rearRight, frontRight],
  ];
  return [middle, ...sides.map(([a, b]) => beyond(middle, halfway(a, b), width, height, 4))];
}

/** The middle of a label that stands `gap` pixels beyond `to`, seen from `from`. */
export function beyond(from: Pixel, to: Pixel, width: number, height: number, gap: number): Pixel {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const away = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / away, dy / away];
  const out = gap + (Math.abs(ux) * width + Math.abs(uy) * height) / 2;
  return { x: to.x + out * ux, y: to.y + out * uy };
}

export const halfway = (a: Pixel, b: Pixel): Pixel => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
