/** Rows of the plain files that the demo's book is made from; each as `write-book.ts` writes it. */
export interface SiteRow {
  readonly id: string;
  readonly name: string;
  readonly lon: number;
  readonly lat: number;
  readonly sideAzimuthDeg: number;
  readonly road: string;
  readonly character: string;
}

export interface MeasurementRow {
  readonly site: string;
  readonly what: string;
  readonly valueM?: number;
  readonly valueDeg?: number;
  readonly by: string;
  readonly on: string;
  readonly method: string;
}

export interface DrillRow {
  readonly on: string;
  readonly site: string;
  readonly station: string;
  readonly crew: string;
  readonly people: number;
  readonly did: string;
  readonly minutes: number;
  readonly resets: number;
}
