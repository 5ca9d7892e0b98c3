import { UserError } from '../../units/index.ts';
import type { Crs } from './crs.ts';
import { crsOfCode } from './crs-of-code.ts';
import { crsOfDefinition } from './crs-of-definition.ts';
import type { EpsgTable } from './epsg-table.ts';

const code = /^\s*(?:EPSG\s*:{1,2}\s*)?(\d{4,6})(?:\s*\+\s*(?:EPSG\s*:{1,2}\s*)?(\d{4,6}))?\s*$/i;
const address =
  /^\s*(?:urn:ogc:def:crs:EPSG:[\d.]*:|https?:\/\/www\.opengis\.net\/def\/crs\/EPSG\/[\d.]+\/)(\d{4,6})\s*$/i;
const wkt = /^\s*(PROJCS|GEOGCS|PROJCRS|GEOGCRS|GEODCRS)\s*\[/i;

/**
 * The system that a person names: 'EPSG:26918', '26918', 'EPSG:26918+5703' with its heights, an OGC name of one, a "+proj="
 * text or WKT. `source` is the option or file it came from. Throws `UserError` where it is none of these or cannot be used.
 */
export function crsOfText(table: EpsgTable, text: string, source: string): Crs {
  const match = code.exec(text) ?? address.exec(text);
  if (match) return crsOfCode(table, Number(match[1]), match[2] ? Number(match[2]) : null, source);
  if (wkt.test(text)) {
    const coded = /(?:AUTHORITY\["EPSG","(\d+)"\]|ID\["EPSG",(\d+)\])\s*\]\s*$/.exec(text);
    const known = coded ? Number(coded[1] ?? coded[2]) : null;
    if (known !== null && table.horizontal(known)) return crsOfCode(table, known, null, source);
    return crsOfDefinition(text, /\["([^"]*)"/.exec(text)?.[1] || 'WKT', null, source);
  }
  if (/\+proj=/.test(text)) return crsOfDefinition(text, text.trim(), null, source);
  throw new UserError(
    'crs-text',
    `${source} is "${text}", which names no coordinate reference system; write it as EPSG:N, for instance EPSG:32610.`,
  );
}
