import { toRadians } from '../../units/index.ts';
import { arcTangent } from './arc-tangent.ts';

/** A raster made from the gradient of another. Azimuths are true where the raster's north is. */
export type Product =
  /** Slope in degrees, 0 to 90. */
  | { readonly kind: 'slope' }
  /** Azimuth in degrees that the ground falls toward, [0, 360); NaN where it is level. */
  | { readonly kind: 'aspect' }
  /** Brightness under a light, 1 to 255 as gdaldem scales it. Usual: from 315° at 45° above the horizon. */
  | { readonly kind: 'hillshade'; readonly azimuthDeg: number; readonly altitudeDeg: number };

/** Turns a row of gradients (rise per metre east, north) into the product's values; NaN stays NaN. */
export type FromGradient = (gx: Float64Array, gy: Float64Array, out: Float32Array) => void;

/** The arithmetic of a product, ready for rows. [source: horn1981; gdal] */
export function fromGradient(product: Product): FromGradient {
  if (product.kind === 'slope') return slope;
  if (product.kind === 'aspect') return aspect;
  return hillshade(product.azimuthDeg, product.altitudeDeg);
}

const DEGREES = 180 / Math.PI;

function slope(gx: Float64Array, gy: Float64Array, out: Float32Array): void {
  for (let i = 0; i < out.length; i++) {
    const x = gx[i];
    const y = gy[i];
    out[i] = arcTangent(Math.sqrt(x * x + y * y)) * DEGREES;
  }
}

function aspect(gx: Float64Array, gy: Float64Array, out: Float32Array): void {
  for (let i = 0; i < out.length; i++) {
    const x = gx[i];
    const y = gy[i];
    const azimuth = Math.atan2(-x, -y) * DEGREES;
    const turned = Math.fround(azimuth < 0 ? azimuth + 360 : azimuth);
    out[i] = x === 0 && y === 0 ? Number.NaN : turned >= 360 ? 0 : turned;
  }
}

/** Cosine of the angle between the light and the ground's normal, from 1 (in shadow) to 255. */
function hillshade(azimuthDeg: number, altitudeDeg: number): FromGradient {
  const up = 254 * Math.sin(toRadians(altitudeDeg));
  const east = 254 * Math.cos(toRadians(altitudeDeg)) * Math.sin(toRadians(azimuthDeg));
  const north = 254 * Math.cos(toRadians(altitudeDeg)) * Math.cos(toRadians(azimuthDeg));
  return (gx, gy, out) => {
    for (let i = 0; i < out.length; i++) {
      const x = gx[i];
      const y = gy[i];
      const lit = (up - east * x - north * y) / Math.sqrt(1 + x * x + y * y);
      out[i] = lit <= 0 ? 1 : 1 + lit;
    }
  };
}
