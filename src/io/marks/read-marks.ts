import type { Geometry } from 'geojson';
import * as v from 'valibot';
import { type Mark, type MarkKind, markKinds } from '../../book/index.ts';
import { UserError } from '../../units/index.ts';

const position = v.pipe(
  v.array(v.pipe(v.number(), v.finite())),
  v.minLength(2),
  v.check(([lon, lat]) => Math.abs(lon!) <= 180 && Math.abs(lat!) <= 90),
);
const geometry = v.variant('type', [
  v.object({ type: v.literal('Point'), coordinates: position }),
  v.object({ type: v.literal('LineString'), coordinates: v.pipe(v.array(position), v.minLength(2)) }),
  v.object({
    type: v.literal('Polygon'),
    coordinates: v.pipe(v.array(v.pipe(v.array(position), v.minLength(4))), v.minLength(1)),
  }),
]);
const positive = v.pipe(v.number(), v.finite(), v.minValue(0));
const feature = v.object({
  type: v.literal('Feature'),
  id: v.optional(v.union([v.string(), v.number()])),
  geometry,
  properties: v.looseObject({
    kind: v.string(),
    id: v.optional(v.union([v.string(), v.number()])),
    name: v.nullish(v.string()),
    trunkDiameterM: v.nullish(positive),
    heightM: v.nullish(positive),
  }),
});
const collection = v.object({ type: v.literal('FeatureCollection'), features: v.array(v.unknown()) });

const isKind = (kind: string): kind is MarkKind => (markKinds as readonly string[]).includes(kind);

/**
 * Marks from the text of a GeoJSON FeatureCollection (WGS 84 longitude, latitude) whose `properties.kind` is a word of the
 * vocabulary. Throws `UserError` with one sentence for anything else; `name` is the file as the user gave it.
 */
export function readMarks(text: string, name: string): Mark[] {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new UserError('marks-not-json', `${name} is not JSON; marks are read from a GeoJSON FeatureCollection.`);
  }
  const outer = v.safeParse(collection, json);
  if (!outer.success) {
    throw new UserError(
      'marks-not-geojson',
      `${name} is JSON but no GeoJSON FeatureCollection; save the marks as one, each feature with a "kind" property.`,
    );
  }
  return outer.output.features.map((raw, i) => toMark(raw, i, name));
}

function toMark(raw: unknown, i: number, file: string): Mark {
  const parsed = v.safeParse(feature, raw);
  if (!parsed.success) {
    const issue = parsed.issues[0];
    const path = v.getDotPath(issue) ?? 'feature';
    throw new UserError(
      'mark-shape',
      `${file}: mark ${i + 1} has an unusable ${path}; expected a point, line or area in longitude and latitude with a "kind" property.`,
    );
  }
  const { properties, geometry: shape, id } = parsed.output;
  if (!isKind(properties.kind)) {
    throw new UserError(
      'mark-kind',
      `${file}: mark ${i + 1} is of kind "${properties.kind}", which Brinkbook does not know; use one of ${markKinds.join(', ')}.`,
    );
  }
  return {
    id: String(properties.id ?? id ?? `M${i + 1}`),
    kind: properties.kind,
    name: properties.name ?? null,
    geometry: shape as Geometry,
    trunkDiameterM: properties.trunkDiameterM ?? null,
    heightM: properties.heightM ?? null,
  };
}
