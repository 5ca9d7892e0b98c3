import type { MapOptions } from '../../map/index.ts';
import type { Desk } from '../actions/index.ts';
import { shownStudy, useSketch, useStudy, useTool } from '../state/index.ts';
import { distanceAlong } from './along-descent.ts';

type Events = Omit<MapOptions, 'tiles' | 'roadside' | 'rule' | 'district' | 'ink' | 'units'>;

/** What the desk does with fingers, mouse and keys on the map. */
export const mapEvents = (desk: Desk): Events => ({
  onMove: desk.tap.move,
  onPlace: desk.tap.place,
  // With a tool in hand a tap is the tool's, wherever it falls.
  onSite: (id, at) => {
    if (useTool.getState().tool === 'look') desk.show({ kind: 'site', id }, undefined, false);
    else desk.tap.place(at);
  },
  onMark: (id, at) => {
    if (useTool.getState().tool === 'look') desk.marks.take(id);
    else desk.tap.place(at);
  },
  onHandleMove: desk.marks.handleMove,
  onHandlePlace: desk.marks.handlePlace,
  onHandleDelete: (id) => desk.marks.handleDelete(id),
  onPatientMove: desk.tap.movePatient,
  onPatientPlace: desk.tap.placePatient,
  onSpotMove: desk.spots.move,
  onSpotPlace: desk.spots.place,
  onAnchor: (id) => desk.spots.toggle(id),
  onHover: (at) => {
    const study = shownStudy(useStudy.getState());
    useSketch.setState({ hairM: at && study ? distanceAlong(study, at) : null });
  },
  onLook: ({ at, zoom }) => desk.lookedAt({ at, zoom }),
  onProblem: desk.mapFailed,
});
