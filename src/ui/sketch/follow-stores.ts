import type { LonLat } from '../../geo/index.ts';
import type { MapHandle } from '../../map/index.ts';
import type { Study, StudyLayout } from '../../study/index.ts';
import {
  inHand,
  type StudyState,
  shapeOf,
  shownStudy,
  useAskedView,
  useBook,
  usePlace,
  useReads,
  useSketch,
  useStudy,
  useTool,
} from '../state/index.ts';
import { handlesOf } from '../survey/mark-corners.ts';
import { positionAlong } from './along-descent.ts';
import { checkedSites, toMapMarks, toMapSites } from './to-map.ts';

/** The map's sites follow what is read of them this often at most, milliseconds. */
const SITES_MS = 1200;

/** The layout that the map draws. Where a technical rope team is needed, none is shown as if the first crew could rig it. */
function chosenLayout({ angle, layouts }: Study): StudyLayout | null {
  const { layoutId } = useSketch.getState();
  const first = angle?.planAs === 'high' ? undefined : layouts[0];
  return layouts.find(({ id }) => id === layoutId) ?? first ?? null;
}

/** What the view of a study takes in beside its point: the descent's end, and the layout that is drawn. */
function placesOf(study: Study, withLayout: boolean): LonLat[] {
  const end = study.descent ? [study.descent.end] : [];
  const layout = withLayout ? chosenLayout(study) : null;
  if (!layout) return end;
  const { anchor, turn, belayAnchor } = layout.points;
  const spots = study.spots.filter(({ id }) => id === layout.anchor || id === layout.turn);
  return [...end, anchor, belayAnchor, ...(turn ? [turn] : []), ...spots];
}

/** Brings the map in step with the stores, now and from now on; returns what ends it. */
export function followStores(map: MapHandle): () => void {
  const looks = { near: 0, whole: 0 };
  let sitesTimer: ReturnType<typeof setTimeout> | undefined;

  /** `before` null at first. Every event of a drag comes by here: lines that stay are not drawn again. */
  const study = (before: StudyState | null): void => {
    const { point, patient, answer, draft, stale, working, look } = useStudy.getState();
    map.setPoint(point);
    map.setPatient(patient);
    if (answer !== before?.answer || draft !== before?.draft || stale !== before?.stale) {
      map.setShapes((draft ?? answer)?.shapes ?? null, stale);
    }
    if (!point) return;
    if (looks.near !== look) map.show(point);
    looks.near = look;
    if (looks.whole === look || working) return;
    looks.whole = look;
    const near = usePlace.getState().screen === 'study';
    if (answer?.study.descent) map.showWhole(point, placesOf(answer.study, near), near);
  };
  const closer = (): void => {
    const { point, answer, working } = useStudy.getState();
    if (point && answer?.study.descent && !working) map.showWhole(point, placesOf(answer.study, true), true);
  };
  const layout = (): void => {
    const { screen } = usePlace.getState();
    const made = screen === 'study' ? shownStudy(useStudy.getState()) : null;
    map.setLayout(made, made ? (chosenLayout(made)?.id ?? null) : null);
  };
  const sites = (): void => {
    map.setSites(toMapSites(useBook.getState().sites, useReads.getState().bySite, checkedSites()));
  };
  const selected = (): void => {
    const { subject } = usePlace.getState();
    map.setSelected(subject?.kind === 'site' ? subject.id : null);
  };
  const hair = (): void => {
    const { hairM } = useSketch.getState();
    const made = shownStudy(useStudy.getState());
    map.setHair(hairM !== null && made ? positionAlong(made, hairM) : null);
  };
  const drawn = (): void => {
    const { corners, moving } = useTool.getState();
    map.setMeasured(corners.length > 0 ? corners : moving);
  };
  const marks = (): void => {
    const { marks: all, supportPlaces } = useBook.getState();
    map.setMarks(toMapMarks(all, supportPlaces));
  };
  const handles = (): void => {
    const thing = inHand();
    map.setHandles(thing ? handlesOf(thing.words, shapeOf(thing)) : []);
  };
  study(null);
  layout();
  sites();
  selected();
  drawn();
  handles();
  const ends = [
    useStudy.subscribe((now, before) => {
      study(before);
      if (now.answer !== before.answer || now.draft !== before.draft) layout();
    }),
    useAskedView.subscribe(({ view }) => {
      if (view) map.setLook({ ...map.look(), ...view });
    }),
    useSketch.subscribe((now, before) => {
      if (now.layoutId !== before.layoutId) layout();
      if (now.hairM !== before.hairM) hair();
    }),
    usePlace.subscribe((now, before) => {
      if (now.screen !== before.screen) {
        layout();
        // What the survey saw from afar is read from near; where somebody looked by himself since, it stays so.
        if (now.screen === 'study' && now.subject === before.subject) closer();
      }
      if (now.subject !== before.subject) selected();
    }),
    useBook.subscribe((now, before) => {
      if (now.sites !== before.sites || now.signOffs !== before.signOffs) sites();
      if (now.marks === before.marks && now.supportPlaces === before.supportPlaces) return;
      marks();
      handles();
    }),
    // Reads come one by one, and the whole map is drawn anew for each change of a source.
    useReads.subscribe((now, before) => {
      if (now.bySite === before.bySite) return;
      sitesTimer ??= setTimeout(() => {
        sitesTimer = undefined;
        sites();
      }, SITES_MS);
    }),
    useTool.subscribe((now, before) => {
      if (now.corners !== before.corners || now.moving !== before.moving) drawn();
      if (now.markId !== before.markId) handles();
    }),
  ];
  return () => {
    clearTimeout(sitesTimer);
    for (const end of ends) end();
  };
}
