import type { FeatureCollection } from 'geojson';
import type { AngleRule } from '../book/index.ts';
import type { LonLat } from '../geo/index.ts';
import type { Study } from '../study/index.ts';
import type { UnitSystem } from '../units/index.ts';
import type { Basemap } from './basemap/index.ts';
import type { MapDistrict, MapMark, MapSite } from './district.ts';
import type { GroundTiles } from './ground-protocol.ts';
import type { HandleEvents, HandlePlace } from './handles.ts';
import type { MapInk } from './ink.ts';
import type { LayoutEvents } from './layout-overlay.ts';
import type { RoadsideTiles } from './roadside.ts';

/** Where the map looks: middle in degrees, zoom, turn and tilt in degrees. */
export interface MapLook {
  readonly at: LonLat;
  readonly zoom: number;
  readonly bearingDeg: number;
  readonly pitchDeg: number;
}

export interface MapOptions extends LayoutEvents, HandleEvents {
  readonly tiles: GroundTiles;
  /** Who reads bench edges and class bands along the roads; left out, none are drawn. */
  readonly roadside?: RoadsideTiles;
  /** The rule that the bands are told by; 30/45 where left out. */
  readonly rule?: AngleRule;
  readonly district: MapDistrict;
  readonly ink: MapInk;
  readonly units: UnitSystem;
  /** The point moves and has not been let go. */
  onMove(at: LonLat): void;
  /** A tap, a released point, or Enter. */
  onPlace(at: LonLat): void;
  /** A tap on a site, and where it fell. */
  onSite(id: string, at: LonLat): void;
  /** A tap on a mark: its id, and where it fell. Without it a mark is ground to tap like any other. */
  onMark?(id: string, at: LonLat): void;
  /** The patient point moves, or was let go. */
  onPatientMove?(at: LonLat): void;
  onPatientPlace?(at: LonLat): void;
  /** The mouse is over a place of the map, or left it. */
  onHover?(at: LonLat | null): void;
  /** The map has come to rest at another look. */
  onLook?(look: MapLook): void;
  /** The device took the drawing away: this map is of no use any more, another one in a new element is. */
  onLost?(): void;
  /** The ground cannot be drawn; one sentence. */
  onProblem(sentence: string): void;
}

export interface MapHandle {
  setDistrict(district: MapDistrict): void;
  /** Other sites on the same district. */
  setSites(sites: readonly MapSite[]): void;
  /** Other marks on the same district. */
  setMarks(marks: readonly MapMark[]): void;
  /** Handles of the mark in hand: a point's own, a line's and an area's corners; empty for none. */
  setHandles(places: readonly HandlePlace[]): void;
  /** The site with the ring around it, null for none. */
  setSelected(id: string | null): void;
  setInk(ink: MapInk): void;
  setUnits(units: UnitSystem): void;
  setRule(rule: AngleRule): void;
  /** The point under study, null for none. */
  setPoint(at: LonLat | null): void;
  /** The patient point, null for none. */
  setPatient(at: LonLat | null): void;
  /** The study's lines; `stale` while they belong to an earlier place of the point. */
  setShapes(shapes: FeatureCollection | null, stale: boolean): void;
  /** The study whose layout `layoutId` is drawn with its apparatus, ropes, haul field and keep-out; null clears. */
  setLayout(study: Study | null, layoutId: string | null): void;
  /** A place shown on the profile too; null for none. */
  setHair(at: LonLat | null): void;
  /** A line being measured, null for none. */
  setMeasured(line: readonly LonLat[] | null): void;
  /** A map to lie under the own one, null for none. Resolves when it is in place or has failed, which the map says itself. */
  setBasemap(basemap: Basemap | null): Promise<void>;
  /** Ground as relief, tilted; or flat, north up. */
  setRelief(on: boolean): void;
  look(): MapLook;
  setLook(look: MapLook): void;
  /** Brings a place into view, near enough to see the road bench. */
  show(at: LonLat): void;
  /** Widens the view until what belongs to a place, as its descent's end, is in it too; `near`: as close as a layout is read from. */
  showWhole(at: LonLat, rest: readonly LonLat[], near: boolean): void;
  remove(): void;
}
