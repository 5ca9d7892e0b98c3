import type { LonLat } from '../../geo/index.ts';
import { idleTool, type ToolName, useMapGone, usePlace, useTool } from '../state/index.ts';
import { roleWords } from '../study/pin-roles.ts';
import type { MarkActions } from './mark-actions.ts';
import type { Navigate } from './navigate.ts';
import { questionOf, toCentimetres } from './question.ts';
import type { SiteActions } from './site-actions.ts';
import type { SpotActions } from './spot-actions.ts';
import type { StudyActions } from './study-actions.ts';

interface Parts {
  readonly study: StudyActions;
  readonly sites: SiteActions;
  readonly marks: MarkActions;
  readonly spots: SpotActions;
  readonly measure: (at: LonLat) => Promise<void>;
}

/** What fingers do to the map: the tool in hand says what a tap means. */
export function createTap(parts: Parts, navigate: Navigate) {
  const { study, sites, marks, spots, measure } = parts;
  let moving = false;

  /** Looks at a point that nobody has kept. */
  function explore(exact: LonLat): void {
    // A tap beside the handles of what is in hand puts it down, and leads nowhere else.
    if (useTool.getState().markId !== null) {
      marks.take(null);
      return;
    }
    const at = toCentimetres(exact);
    navigate.go({ subject: { kind: 'point', at, side: null } });
    study.ask({ at, side: 'of the point', patient: null, patients: 1, pins: {} }, ({ study: { site } }) =>
      navigate.go({ subject: { kind: 'point', at, side: site.side } }, 'replace'),
    );
  }

  const uses: Partial<Record<ToolName, (at: LonLat) => void>> = {
    look: explore,
    site: (at) => void sites.place(at),
    move: marks.moveTo,
    measure: (at) => void measure(at),
    'landing zone': marks.landingZone,
    spot(at) {
      const problem = spots.park(at);
      const { role } = useTool.getState().parked;
      useTool.setState(problem ? { said: problem } : { said: `Pinned there as ${roleWords[role]}.`, tool: 'look' });
    },
    'patient point': placePatient,
  };

  function placePatient(at: LonLat | null): void {
    const { subject } = usePlace.getState();
    if (subject?.kind !== 'site') {
      useTool.setState({ said: 'A patient point belongs to a site: pick or place one first.' });
      return;
    }
    useTool.setState({ tool: 'look', said: null });
    sites.edit(
      subject.id,
      { patientPoint: at && toCentimetres(at) },
      at ? 'Put the patient point' : 'Take the patient point away',
    );
  }

  const use = (tool: ToolName, at: LonLat): void => {
    const known = uses[tool];
    if (known) known(at);
    else marks.tap(tool as Parameters<MarkActions['tap']>[0], at);
  };

  /** True, and told, where there is no map: nothing is put where nobody sees it. */
  const noMap = (): boolean => {
    const none = useMapGone.getState().gone !== null;
    if (none) useTool.setState({ said: 'There is no map to tap on: look up a place by its coordinates.' });
    return none;
  };

  return {
    /** What the phone's key does: the tool in hand, or a new site, at the middle of the map. */
    atCross(): void {
      const cross = usePlace.getState().view?.at;
      const { tool } = useTool.getState();
      if (noMap()) return;
      if (cross) use(tool === 'look' ? 'site' : tool, toCentimetres(cross));
    },
    /** The point moves under a finger or a key: the study follows, book and address wait. */
    move(at: LonLat): void {
      moving = true;
      const { subject } = usePlace.getState();
      const question = subject && questionOf(subject);
      if (question) study.follow({ ...question, at: toCentimetres(at), side: 'of the point' });
    },
    /** A tap, a released point, or Enter. */
    place(exact: LonLat): void {
      const { tool } = useTool.getState();
      const { subject } = usePlace.getState();
      const released = moving;
      moving = false;
      const at = toCentimetres(exact);
      if (released && subject?.kind === 'site') {
        const question = questionOf(subject);
        if (question)
          study.ask({ ...question, at, side: 'of the point' }, (answer) => sites.moveTo(subject.id, answer.study));
      } else if (released) explore(at);
      else use(tool, at);
    },
    movePatient(at: LonLat): void {
      const { subject } = usePlace.getState();
      const question = subject && questionOf(subject);
      if (question) study.follow({ ...question, patient: at });
    },
    placePatient,
    /** Takes a cut of the stencil in hand; the same one again puts it down. */
    take(tool: ToolName): void {
      const now = useTool.getState().tool;
      if (tool !== 'look' && noMap()) return;
      const { markId } = useTool.getState();
      useTool.setState({ ...idleTool, tool: now === tool ? 'look' : tool, markId: tool === 'move' ? markId : null });
    },
  };
}
