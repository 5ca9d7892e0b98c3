import { formatDecimalDegrees, formatUsng } from '../../geo/index.ts';
import type { Placed } from './placed.ts';
import { changedWords, type SiteFacts } from './site-facts.ts';

/** What a map program shows of a record beside its name, one line each, plain text. */
export function notesOf(placed: Placed, facts: ReadonlyMap<string, SiteFacts>): string[] {
  const { table, record } = placed;
  const lines: (string | null)[] = [];
  if (table === 'sites') {
    const own = facts.get(record.id)!;
    const { check } = own;
    const { patientPoint: patient } = record;
    lines.push(
      changedWords(own),
      record.roadName && `Road: ${record.roadName}`,
      `Grid: ${formatUsng(record.place) ?? 'none'}`,
      `Drops toward ${Math.round(record.place.sideAzimuthDeg) % 360}° true`,
      patient && `Patient point: ${formatDecimalDegrees(patient)}`,
      record.radio && `Radio: ${record.radio}`,
      check ? `Field check: ${check.on}, ${check.method}, ${check.by}` : 'Not field-verified',
    );
  }
  if (table === 'marks') {
    lines.push(
      record.siteId && `Site: ${record.siteId}`,
      record.trunkDiameterM === null ? null : `Trunk ${record.trunkDiameterM} m`,
      record.heightM === null ? null : `Height ${record.heightM} m`,
    );
  }
  if (table === 'supportPlaces') {
    lines.push(
      record.vehicles === null ? null : `Room for ${record.vehicles} vehicles`,
      record.lengthM === null || record.widthM === null ? null : `Free ground ${record.lengthM} × ${record.widthM} m`,
      record.hazards && `Hazards: ${record.hazards}`,
    );
  }
  if (table === 'stations') lines.push(record.phone, record.radio);
  if ('notes' in record) lines.push(record.notes);
  return lines.filter((line): line is string => line !== null && line !== '');
}
