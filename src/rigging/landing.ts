export interface LandingSettings {
  /** How far past the edge the load should come, metres. */
  readonly landingM: number;
  /** Length of the collapsed system at the anchor of a straight haul, metres. */
  readonly collapsedM: number;
  /** Kept between the load and the turn or the collapsed system, metres. */
  readonly landingGapM: number;
}

/** How far past the edge the haul brings the load, and what is missing of the wish and has to be lifted by hand, metres. */
export interface Landing {
  readonly landingM: number;
  readonly liftedByHandM: number;
}

/** Landing of a straight haul by its field, of a turned one by the distance from edge to turn, metres (common practice, no source). */
export function landing(kind: 'straight' | 'turned', roomM: number, settings: LandingSettings): Landing {
  const free = (kind === 'straight' ? roomM - settings.collapsedM : roomM) - settings.landingGapM;
  const landingM = Math.max(0, Math.min(settings.landingM, free));
  return { landingM, liftedByHandM: settings.landingM - landingM };
}
