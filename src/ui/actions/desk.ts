import type { Conditions } from '../../rigging/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import type { MapView, ScreenName, Subject } from '../address.ts';
import {
  createBookLog,
  type LightChoice,
  useAskedView,
  useBook,
  useGiven,
  usePlace,
  useReading,
  useTool,
} from '../state/index.ts';
import type { DeskWorkers } from './deps.ts';
import { createDistrictActions } from './district-actions.ts';
import { createMarkActions } from './mark-actions.ts';
import { createMeasure } from './measure-actions.ts';
import { createNavigate } from './navigate.ts';
import { createReadingActions } from './reading-actions.ts';
import { followRoadOrder } from './road-order.ts';
import { createSiteActions } from './site-actions.ts';
import { createSiteReads } from './site-reads.ts';
import { createSpotActions } from './spot-actions.ts';
import { createStudyActions } from './study-actions.ts';
import { createTap } from './tap.ts';
import { tellResources } from './tell-resources.ts';

/** Everything a person can do at the desk. */
export type Desk = ReturnType<typeof createDesk>;

/** Gathers the actions over the two workers. */
export function createDesk(workers: DeskWorkers) {
  const log = createBookLog();
  const deps = { workers, log };
  const navigate = createNavigate();
  const study = createStudyActions(deps);
  const sites = createSiteActions(deps, navigate, study);
  const marks = createMarkActions(deps);
  const spots = createSpotActions(deps, study);
  const district = createDistrictActions(deps, study, navigate);
  const tap = createTap({ study, sites, marks, spots, measure: createMeasure(deps) }, navigate);

  tellResources(deps, study);
  followRoadOrder(deps);

  /** An edit or an undo of the site on the desk is worked out at once. */
  useBook.subscribe(({ sites: now }, before) => {
    const { subject } = usePlace.getState();
    if (subject?.kind !== 'site' || now.get(subject.id) === before.sites.get(subject.id)) return;
    study.again();
  });

  function show(subject: Subject | null, screen?: ScreenName, look = true): void {
    navigate.go({ subject, ...(screen ? { screen } : {}) });
    useTool.setState({ said: null, markId: null });
    study.visit(look);
  }

  return {
    ...district,
    navigate,
    sites,
    marks,
    spots,
    tap,
    readings: createReadingActions(deps),
    reads: createSiteReads(deps),
    /** One command of one person on the book, any table; true once it is kept. */
    edit: log.commit,
    undo: log.undo,
    redo: log.redo,
    saveAgain: log.saveAgain,
    /** Brings a site or a point onto the desk, on the screen in force or on another one. */
    show,
    goTo(screen: ScreenName): void {
      const { subject } = usePlace.getState();
      if (screen === 'study' && !subject) return;
      if (screen === 'check' && subject?.kind !== 'site') return;
      navigate.go({ screen });
    },
    lookedAt: (view: MapView): void => navigate.go({ view }, 'replace'),
    /** Another address in an open window: pasted, or gone back to. */
    followAddress(): void {
      const { subjectChanged, view } = navigate.follow();
      if (view) useAskedView.setState({ view });
      if (subjectChanged) study.visit(view === null);
    },
    setUnits(units: UnitSystem): void {
      useReading.setState({ units });
      study.again();
    },
    setRule(ruleName: string): void {
      useGiven.setState({ ruleName });
      study.again();
    },
    setCondition(name: keyof Conditions, on: boolean): void {
      useGiven.setState(({ conditions }) => ({ conditions: { ...conditions, [name]: on } }));
      study.again();
    },
    setLight: (light: LightChoice): void => useReading.setState({ light }),
  };
}
