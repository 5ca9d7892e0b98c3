import { KIND } from './edge-kind.ts';

/** What remains when everything agrees, metres: the cell's own smearing of a corner. */
const FLOOR_M = 0.035;
/** Share of the single sections' scatter that the filter leaves. */
const SCATTER_SHARE = 0.45;
/** Share of the height noise that the filter leaves in a fitted line. */
const NOISE_SHARE = 0.25;
/** Weight of the slope's roughness: its waves are longer than the filter. */
const SPREAD_SHARE = 1.8;
/** Share of the edge's own bending, over this many stations either way, that the filter may have cut off. */
const CURVE_SHARE = 0.3;
const CURVE_HALF = 6;
/** Added where a berm was taken out beside the edge, metres, from bumps of this height up. */
const BERM_M = 0.1;
const BERM_HEIGHT_M = 0.1;
/** Added where the edge lies behind a low bank, metres: it was read from single heights. */
const BANK_M = 0.4;
/** Added within `NEAR` stations of a place where the side turns from cut to fill or the edge jumps, metres. */
const CHANGE_M = 0.5;
const NEAR = 8;
/** Lines that part less (tangent) count as parting this much. */
const LEAST_PARTING = 0.15;
const JUMP_M = 2;

/**
 * One sigma of the edge offset at each station, metres: the floor, the scatter of single sections about the filtered edge,
 * height noise and roughness over the change of slope, bending along the road and a berm taken out, in quadrature; wider
 * where a side turns from cut to fill, since the edge has no one place there. The shares were set so that ± 1.645 sigma holds the truth at nine stations of ten on made
 * roads; see the accuracy tests.
 */
export function edgeSigma(
  side: {
    readonly edgeM: Float64Array;
    readonly scatterM: Float64Array;
    readonly parting: Float64Array;
    /** Robust spread of the slope about its line, and the highest bump taken out beside the edge, metres. */
    readonly spreadM: Float64Array;
    readonly bumpM: Float64Array;
    /** Foot of a low bank before the edge, NaN where there is none. */
    readonly footM: Float64Array;
    readonly kind: Uint8Array;
  },
  noiseM: number,
  cellM: number,
): Float64Array {
  const { edgeM, scatterM, parting, spreadM, bumpM, footM, kind } = side;
  const count = edgeM.length;
  const sigma = new Float64Array(count);
  // Half as many cells along the road tell half as much: what the filter leaves grows with the root of the cell.
  const fewer = Math.sqrt(Math.max(1, cellM));
  for (let i = 0; i < count; i++) {
    const across = Math.max(LEAST_PARTING, parting[i]!);
    const noise = (NOISE_SHARE * noiseM) / across;
    const rough = (SPREAD_SHARE * spreadM[i]!) / across;
    const berm = bumpM[i]! > BERM_HEIGHT_M ? BERM_M : 0;
    const bend = CURVE_SHARE * curveOf(edgeM, i);
    const scatter = SCATTER_SHARE * scatterM[i]!;
    const bank = Number.isNaN(footM[i]) ? 0 : BANK_M;
    sigma[i] = Math.hypot(FLOOR_M, bank, fewer * Math.hypot(scatter, noise, rough), berm, bend);
  }
  for (let i = 1; i < count; i++) {
    if (!changes(kind[i - 1]!, kind[i]!) && !(Math.abs(edgeM[i]! - edgeM[i - 1]!) > JUMP_M)) continue;
    for (let k = Math.max(0, i - NEAR); k < Math.min(count, i + NEAR); k++) sigma[k] = Math.max(sigma[k]!, CHANGE_M);
  }
  return sigma;
}

/** How far the edge of a station stands off the middle of its neighbours either way, metres; 0 where one is missing. */
const curveOf = (edgeM: Float64Array, i: number): number =>
  Math.abs(edgeM[i - CURVE_HALF]! - 2 * edgeM[i]! + edgeM[i + CURVE_HALF]!) / 2 || 0;

/** True where one station's end rises and the next one's does not. */
const changes = (a: number, b: number): boolean => (a === KIND.rise) !== (b === KIND.rise);
