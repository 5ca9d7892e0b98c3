import * as v from 'valibot';
import { UserError } from '../../units/index.ts';

/** A site as a list of sites names it: a roadside place with a side of the road line as drawn. */
export interface ListedSite {
  readonly id: string;
  readonly name: string;
  readonly lon: number;
  readonly lat: number;
  readonly side: 'left' | 'right';
  readonly sideAzimuthDeg: number;
  readonly road: string;
}

/** A district's name and its sites. */
export interface SiteList {
  readonly district: string;
  readonly sites: readonly ListedSite[];
}

const degrees = (limit: number) => v.pipe(v.number(), v.minValue(-limit), v.maxValue(limit));
const list = v.object({
  schema: v.literal('brinkbook/demo-sites@1'),
  district: v.string(),
  sites: v.array(
    v.object({
      id: v.string(),
      name: v.string(),
      lon: degrees(180),
      lat: degrees(90),
      side: v.picklist(['left', 'right']),
      sideAzimuthDeg: v.pipe(v.number(), v.minValue(0), v.maxValue(360)),
      road: v.string(),
    }),
  ),
});

/** The demo district's list of sites, from its JSON text; throws `UserError` with one sentence for anything else. */
export function readSites(text: string, name: string): SiteList {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new UserError('sites-not-json', `${name} is not JSON; make the demo district again with npm run demo.`);
  }
  const parsed = v.safeParse(list, json);
  if (parsed.success) return parsed.output;
  const where = v.getDotPath(parsed.issues[0]) ?? 'file';
  throw new UserError(
    'sites-shape',
    `${name} has an unusable ${where}; expected a list of sites (brinkbook/demo-sites@1), make it again with npm run demo.`,
  );
}
