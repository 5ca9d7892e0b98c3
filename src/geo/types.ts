/** A position on the Earth: WGS 84 degrees. An object, not a pair, so that it cannot be swapped with local metres. */
export interface LonLat {
  readonly lon: number;
  readonly lat: number;
}

/** A position on the local metric plane of a site: metres, x to true east and y to true north at the plane's origin. */
export interface PointM {
  readonly x: number;
  readonly y: number;
}

/**
 * The local metric plane of a site: a transverse Mercator on the WGS 84 ellipsoid, scale 1 at its origin, which is the
 * site. Within 1 km a length on it is true to 2 parts in 10⁸, an azimuth to the convergence (under 0.01° at 60° latitude).
 */
export interface LocalPlane {
  readonly origin: LonLat;
  toLocal(position: LonLat): PointM;
  toLonLat(point: PointM): LonLat;
}
