/** The colours and typefaces a map is drawn with, as CSS writes them; the page hands in those of its own tokens. */
export interface MapInk {
  readonly night: boolean;
  readonly paper: string;
  readonly leaf: string;
  readonly ink: string;
  readonly ink2: string;
  readonly rule: string;
  readonly accent: string;
  readonly water: string;
  readonly wood: string;
  readonly contour: string;
  readonly contour2: string;
  readonly contourText: string;
  /** Tones of the angle classes, from pale to dark (by night from dark to pale). */
  readonly low: string;
  readonly steep: string;
  readonly high: string;
  readonly words: string;
  readonly figures: string;
}
