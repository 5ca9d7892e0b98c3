/** What the weather and the ground do on the day. Each one set may make a result worse, never better. */
export interface Conditions {
  readonly wet: boolean;
  /** Ice or snow on the road and the slope. */
  readonly ice: boolean;
  readonly night: boolean;
  readonly wind: boolean;
  /** Loose ground under the attendants' boots on the slope. */
  readonly looseGround: boolean;
}

export const fairConditions: Conditions = { wet: false, ice: false, night: false, wind: false, looseGround: false };
