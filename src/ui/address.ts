import { idPattern } from '../book/index.ts';
import type { LonLat } from '../geo/index.ts';
import type { Side } from '../study/index.ts';

export const screens = ['survey', 'study', 'check', 'book', 'open'] as const;
export type ScreenName = (typeof screens)[number];

/** What the screen is about: a site of the book, or a point beside a road that nobody has kept. */
export type Subject =
  | { readonly kind: 'site'; readonly id: string }
  | { readonly kind: 'point'; readonly at: LonLat; readonly side: Side | null };

/** Middle and zoom of the map. */
export interface MapView {
  readonly at: LonLat;
  readonly zoom: number;
}

/** What the address bar says. */
export interface Place {
  readonly screen: ScreenName;
  readonly subject: Subject | null;
  readonly view: MapView | null;
  /** The leaf of the book that lies open; its first where none is named. */
  readonly leaf?: string;
}

export const startPlace: Place = { screen: 'survey', subject: null, view: null };

/** Reads `#/SCREEN[/SITE or /LON,LAT[,side]][@LON,LAT,ZOOM][?LEAF]`; anything else is the start. */
export function readAddress(hash: string): Place {
  const match = /^#\/([a-z]+)(?:\/([^@/?]+))?(?:@([^@/?]+))?(?:\?([a-z-]+))?$/.exec(hash);
  const screen = screens.find((name) => name === match?.[1]);
  if (!match || !screen) return startPlace;
  const subject = match[2] === undefined ? null : readSubject(match[2]);
  if (match[2] !== undefined && !subject) return startPlace;
  if (screen === 'study' && !subject) return startPlace;
  if (screen === 'check' && subject?.kind !== 'site') return startPlace;
  const view = match[3] === undefined ? null : readView(match[3]);
  return { screen, subject, view, ...(screen === 'book' && match[4] !== undefined && { leaf: match[4] }) };
}

/** Writes an address; positions to a centimetre, the map's middle to a metre. */
export function writeAddress({ screen, subject, view, leaf }: Place): string {
  const map = view ? `@${view.at.lon.toFixed(5)},${view.at.lat.toFixed(5)},${view.zoom.toFixed(1)}` : '';
  const at = `${map}${screen === 'book' && leaf !== undefined ? `?${leaf}` : ''}`;
  if (!subject) return `#/${screen}${at}`;
  return `#/${screen}/${subject.kind === 'site' ? subject.id : writePoint(subject)}${at}`;
}

/** True where both are about the same thing. */
export function sameSubject(a: Subject | null, b: Subject | null): boolean {
  if (a === null || b === null) return a === b;
  if (a.kind === 'site' || b.kind === 'site') return a.kind === 'site' && b.kind === 'site' && a.id === b.id;
  return writePoint(a) === writePoint(b);
}

const writePoint = ({ at, side }: Extract<Subject, { kind: 'point' }>): string =>
  `${at.lon.toFixed(7)},${at.lat.toFixed(7)}${side ? `,${side}` : ''}`;

function readSubject(text: string): Subject | null {
  if (idPattern.test(text)) return { kind: 'site', id: text };
  const match = /^(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)(?:,(left|right))?$/.exec(text);
  const at = match && position(match[1]!, match[2]!);
  return at ? { kind: 'point', at, side: (match[3] as Side | undefined) ?? null } : null;
}

function readView(text: string): MapView | null {
  const match = /^(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/.exec(text);
  const at = match && position(match[1]!, match[2]!);
  const zoom = Number(match?.[3]);
  return at && zoom <= 24 ? { at, zoom } : null;
}

function position(lon: string, lat: string): LonLat | null {
  const at = { lon: Number(lon), lat: Number(lat) };
  return Math.abs(at.lon) > 180 || Math.abs(at.lat) > 90 ? null : at;
}
