/** How the ground may depart from straight pieces; heights in metres on the 1 m knots of a 5 m window. */
export type Roughness =
  | { readonly kind: 'none'; readonly weight: number }
  /** The slope wanders: standard deviation of its change over one metre, tan. */
  | { readonly kind: 'wander'; readonly tanPerRootM: number; readonly weight: number }
  /** Waves with this root mean square height. */
  | { readonly kind: 'waves'; readonly rmsM: number; readonly weight: number };

/**
 * What is believed of a hillside before its heights are read: straight pieces between a few breaks, plus one level of
 * roughness, plus the raster's error. Weak on purpose. The form and the first settings come from a trial on simulated
 * ground; the weights on waves follow what was measured on open lidar (8 to 10 cm at 3 to 10 m on normal hillsides).
 * Common practice, no source; what would change them is a survey of real profiles with a total station.
 */
export interface ErrorShape {
  readonly variance: number;
  readonly lagOne: number;
  readonly weight: number;
}

export interface SlopeModel {
  /** Most breaks that one profile may have. */
  readonly breakSlots: number;
  /** Chance that a slot holds a break. */
  readonly breakChance: number;
  /** Standard deviation of the change of slope at a break, tan. */
  readonly breakTan: number;
  /** First slope, tan, positive downward: mean and standard deviation. */
  readonly firstTan: readonly [mean: number, sd: number];
  readonly roughness: readonly Roughness[];
  /** Length of the waves and the distance over which they lose their phase, metres. */
  readonly waveM: readonly [length: number, decay: number];
  /** Errors held possible, as first-order chains between 1 m knots: variance as a multiple of σ², correlation from knot to knot. */
  readonly errors: readonly ErrorShape[];
  /** Sweeps before the first draw, and how many of them hold the first roughness, which must be none. */
  readonly burnIn: number;
  readonly straightSweeps: number;
  readonly draws: number;
  readonly slotsPerSweep: number;
  readonly seed: number;
}

export const slopeModel: SlopeModel = {
  breakSlots: 8,
  breakChance: 0.35,
  breakTan: 0.4,
  firstTan: [0.75, 0.6],
  roughness: [
    { kind: 'none', weight: 0.2 },
    { kind: 'wander', tanPerRootM: 0.01, weight: 0.12 },
    { kind: 'wander', tanPerRootM: 0.04, weight: 0.08 },
    { kind: 'waves', rmsM: 0.025, weight: 0.1 },
    { kind: 'waves', rmsM: 0.05, weight: 0.2 },
    { kind: 'waves', rmsM: 0.1, weight: 0.2 },
    { kind: 'waves', rmsM: 0.2, weight: 0.1 },
    { kind: 'waves', rmsM: 0.35, weight: 0.06 },
  ],
  waveM: [8, 15],
  errors: [
    { variance: 1.15, lagOne: 0.7, weight: 0.6 },
    { variance: 1.05, lagOne: 0.88, weight: 0.4 },
  ],
  burnIn: 60,
  straightSweeps: 40,
  draws: 200,
  slotsPerSweep: 3,
  seed: 20,
};
