import type { Records } from './district-places.ts';
import type { DrillRow, MeasurementRow } from './plain-files.ts';

const quantity: Readonly<Record<string, string>> = {
  'edge from the middle of the road': 'edgeOffsetM',
  'angle on the steepest 5 m': 'angleDeg',
};
const tools: Readonly<Record<string, string>> = {
  tape: 'tape',
  'hand level and tape': 'hand level',
  inclinometer: 'inclinometer',
};

interface Placed {
  readonly id: string;
  readonly lon: number;
  readonly lat: number;
}

/** Readings as they were entered at their sites. */
export const measurementRecords = (rows: readonly MeasurementRow[], sites: readonly Placed[]): Records =>
  rows.map(({ site, what, valueM, valueDeg, by, on, method }, i) => ({
    id: `reading-${i + 1}`,
    siteId: site,
    reading: { quantity: quantity[what]!, value: valueM ?? valueDeg },
    at: placeOf(sites.find(({ id }) => id === site)!),
    tool: tools[method]!,
    by,
    on,
  }));

const placeOf = ({ lon, lat }: Placed) => ({ lon, lat });

/** Whoever measured at a site walked it that day: one sign-off for each site and day. */
export function signOffRecords(rows: readonly MeasurementRow[]): Records {
  const walks = new Map(rows.map((row) => [`${row.site} ${row.on}`, row]));
  return [...walks.values()].map(({ site, by, on }, i) => ({
    id: `check-${i + 1}`,
    siteId: site,
    by,
    role: null,
    on,
    method: 'walked',
    conditions: 'dry, daylight',
  }));
}

export const drillRecords = (rows: readonly DrillRow[]): Records =>
  rows.map(({ site, station, ...rest }, i) => ({ id: `drill-${i + 1}`, siteId: site, stationId: station, ...rest }));
