import { FOOT_M } from '../units/index.ts';
import type { Tags } from './network.ts';

/** How a width came to be: read from a tag, or taken from the number of lanes or the default. */
export interface TaggedLength {
  readonly valueM: number;
  readonly how: 'typed' | 'assumed';
  /** What it rests on, for people: "width tag", "2 lanes of 3 m". */
  readonly rule: string;
}

/** What the tags say of a shoulder: null where they are silent, which is not the same as none. */
export interface ShoulderTag {
  readonly present: boolean | null;
  readonly widthM: number | null;
}

/** A road way's tags read once. Sides are those of the direction of drawing. */
export interface RoadTraits {
  readonly lanes: number | null;
  /** Carriageway without shoulders, metres. */
  readonly carriageway: TaggedLength;
  readonly shoulder: { readonly left: ShoulderTag; readonly right: ShoulderTag };
  /** Posted speed in km/h, null where untagged or not a number. */
  readonly maxSpeedKmh: number | null;
  readonly surface: string | null;
  /** null where the surface is untagged or its word is unknown. */
  readonly paved: boolean | null;
  readonly bridge: boolean;
  readonly tunnel: boolean;
  readonly oneway: 'no' | 'forward' | 'backward';
  /** A carriageway of a divided road, as far as its own tags say. */
  readonly divided: boolean;
}

/** Width of a lane where no width is tagged, metres (common practice, no source; low on purpose). */
export const ASSUMED_LANE_M = 3;

const KMH_PER_MPH = 1.609344;
const KMH_PER_KNOT = 1.852;
const pavedWords = /^(paved|asphalt|concrete|chipseal|sett|paving_stones|cobblestone|metal)/;
const unpavedWords = /^(unpaved|gravel|fine_gravel|compacted|dirt|earth|ground|grass|sand|mud|pebblestone|rock|wood)/;
const oneLaneClasses = new Set(['service', 'track']);

/** Reads the tags of a road way [source: osm-tags]; nothing in them can fail, an unreadable value counts as silent. */
export function readRoadTags(tags: Tags): RoadTraits {
  const oneway = onewayOf(tags);
  const surface = tags.surface ?? null;
  const lanes = laneCount(tags);
  return {
    lanes,
    carriageway: carriagewayOf(tags, lanes, oneway),
    shoulder: { left: shoulderOf(tags, 'left'), right: shoulderOf(tags, 'right') },
    maxSpeedKmh: speedKmh(tags.maxspeed),
    surface,
    paved: surface === null ? null : pavedWords.test(surface) ? true : unpavedWords.test(surface) ? false : null,
    bridge: isSet(tags.bridge),
    tunnel: isSet(tags.tunnel) || tags.covered === 'yes',
    oneway,
    divided: isSet(tags.dual_carriageway) || (oneway !== 'no' && /^(motorway|trunk)$/.test(tags.highway ?? '')),
  };
}

/**
 * A length as map tags write it, in metres: "6", "6.5 m", "20 ft", "7'6\"". Null where it is no positive length.
 * A bare number is metres, as the tagging rules say.
 */
export function lengthTagM(text: string | undefined): number | null {
  if (text === undefined) return null;
  const feetInches = /^\s*(\d+(?:\.\d+)?)\s*(?:'|ft|feet)\s*(?:(\d+(?:\.\d+)?)\s*(?:"|in|inch(?:es)?)?)?\s*$/.exec(
    text,
  );
  const metres = /^\s*(\d+(?:[.,]\d+)?)\s*(m|metres?|meters?)?\s*$/.exec(text);
  const value = feetInches
    ? (Number(feetInches[1]) + Number(feetInches[2] ?? 0) / 12) * FOOT_M
    : metres
      ? Number(metres[1]!.replace(',', '.'))
      : Number.NaN;
  return value > 0 ? value : null;
}

/** A speed tag in km/h: "60", "45 mph", "10 knots"; null for words such as "none" and for zone codes. */
export function speedKmh(text: string | undefined): number | null {
  const match = /^\s*(\d+(?:\.\d+)?)\s*(mph|km\/h|kmh|kph|knots)?\s*$/.exec(text ?? '');
  if (!match) return null;
  const value = Number(match[1]) * (match[2] === 'mph' ? KMH_PER_MPH : match[2] === 'knots' ? KMH_PER_KNOT : 1);
  return value > 0 ? value : null;
}

const isSet = (value: string | undefined): boolean => value !== undefined && value !== 'no';

function onewayOf(tags: Tags): RoadTraits['oneway'] {
  const word = tags.oneway;
  if (word === '-1' || word === 'reverse') return 'backward';
  if (word === 'yes' || word === '1' || word === 'true') return 'forward';
  if (word === undefined && (tags.highway === 'motorway' || tags.junction === 'roundabout')) return 'forward';
  return 'no';
}

function laneCount(tags: Tags): number | null {
  const count = (key: string): number => Number(tags[key] ?? Number.NaN);
  const all = count('lanes');
  if (all > 0) return all;
  const both = count('lanes:forward') + count('lanes:backward');
  return both > 0 ? both : null;
}

function carriagewayOf(tags: Tags, lanes: number | null, oneway: RoadTraits['oneway']): TaggedLength {
  for (const key of ['width:carriageway', 'width']) {
    const valueM = lengthTagM(tags[key]);
    if (valueM !== null) return { valueM, how: 'typed', rule: `${key} tag` };
  }
  if (lanes !== null) {
    return { valueM: lanes * ASSUMED_LANE_M, how: 'assumed', rule: `${lanes} tagged lanes of ${ASSUMED_LANE_M} m` };
  }
  const oneLane = oneLaneClasses.has(tags.highway ?? '') || (oneway !== 'no' && tags.highway !== 'motorway');
  const assumed = oneLane ? 1 : 2;
  const noun = assumed === 1 ? 'lane' : 'lanes';
  return { valueM: assumed * ASSUMED_LANE_M, how: 'assumed', rule: `${assumed} ${noun} of ${ASSUMED_LANE_M} m` };
}

function shoulderOf(tags: Tags, side: 'left' | 'right'): ShoulderTag {
  const own = tags[`shoulder:${side}`];
  const widthM = lengthTagM(tags[`shoulder:${side}:width`] ?? tags['shoulder:both:width'] ?? tags['shoulder:width']);
  if (own !== undefined) return own === 'no' ? { present: false, widthM: null } : { present: true, widthM };
  const word = tags.shoulder ?? tags['shoulder:both'];
  if (word === undefined) return { present: widthM === null ? null : true, widthM };
  const present = word === 'both' || word === side || !['no', 'left', 'right'].includes(word);
  return { present, widthM: present ? widthM : null };
}
