/** WGS 84 degrees, printed to 1e-8. */
export interface Position {
  lon: number;
  lat: number;
}
