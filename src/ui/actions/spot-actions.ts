import type { LonLat } from '../../geo/index.ts';
import type { Pins, Study } from '../../study/index.ts';
import { shownStudy, usePlace, useStudy, useTool } from '../state/index.ts';
import { roleWords } from '../study/pin-roles.ts';
import { apparatusIn, apparatusOf, spotIdAt } from '../study/spot-id-at.ts';
import type { Deps } from './deps.ts';
import { type Question, questionOf } from './question.ts';
import type { StudyActions } from './study-actions.ts';

export type PinRole = keyof Pins;

/** Where a person wants an apparatus. */
export interface SpotWish {
  readonly id: string;
  readonly at: LonLat;
  readonly headingDeg: number;
}

/** What can be done to spots and anchors. */
export interface SpotActions {
  /** A spot moves under a finger: the rest of the layout follows. */
  move(wish: SpotWish): void;
  /** The spot was let go: it is pinned there, one command of the book. */
  place(wish: SpotWish): void;
  /** Parks the apparatus that was chosen at a tap and pins it as what was chosen; why it cannot, null where it did. */
  park(at: LonLat): string | null;
  pin(role: PinRole, id: string | null): void;
  /** Pins what the first layouts use there, or lets it go again. */
  toggle(id: string): void;
}

export function createSpotActions({ log }: Pick<Deps, 'log'>, study: StudyActions): SpotActions {
  /** The question with other pins, or null where nothing is on the desk. */
  const withPin = (role: PinRole, id: string | null): Question | null => {
    const { subject } = usePlace.getState();
    const question = subject && questionOf(subject);
    if (!question) return null;
    const pins: Record<string, string> = { ...loosePins, ...question.pins };
    if (id === null) delete pins[role];
    else pins[role] = id;
    return { ...question, pins };
  };
  /** Pins of a point that nobody has kept: they last as long as it is looked at. */
  let loosePins: Pins = {};
  usePlace.subscribe((place, before) => {
    if (place.subject !== before.subject) loosePins = {};
  });

  function pin(role: PinRole, id: string | null): void {
    const { subject } = usePlace.getState();
    const question = withPin(role, id);
    if (!subject || !question) return;
    if (subject.kind === 'site') {
      const label = id === null ? `Unpin the ${roleWords[role]}` : `Pin the ${roleWords[role]}`;
      void log.commit(label, [{ table: 'sites', id: subject.id, set: { [fields[role]]: id } }]);
    } else {
      loosePins = question.pins;
      study.ask(question);
    }
  }

  /** The spot under a finger. Its id says where it stood when it was taken: in newer studies it has another, and no longer a role. */
  let held: { readonly id: string; readonly role: PinRole } | null = null;
  const wished = (wish: SpotWish): { role: PinRole; id: string } | null => {
    const made = shownStudy(useStudy.getState());
    const known = held?.id === wish.id ? held : null;
    if (!made || !(known || made.spots.some(({ id }) => id === wish.id))) return null;
    held = known ?? { id: wish.id, role: roleOf(made, wish.id) };
    const id = spotIdAt(made, apparatusOf(wish.id), wish.at, wish.headingDeg);
    return id ? { role: held.role, id } : null;
  };
  return {
    move(wish) {
      const to = wished(wish);
      const question = to && withPin(to.role, to.id);
      if (question) study.ask(question);
    },
    place(wish) {
      const to = wished(wish);
      held = null;
      if (to) pin(to.role, to.id);
    },
    park(at) {
      const made = shownStudy(useStudy.getState());
      const { parked } = useTool.getState();
      const apparatus = parked.apparatus ?? (made && apparatusIn(made)[0]?.id);
      if (!made || !apparatus) return 'No apparatus can be parked here: the study has no spots.';
      const id = spotIdAt(made, apparatus, at, null);
      if (!id) return 'That is too far along the road from the site.';
      pin(parked.role, id);
      return null;
    },
    pin,
    toggle(id) {
      const { pins } = useStudy.getState();
      const made = shownStudy(useStudy.getState());
      if (!made) return;
      const role = (Object.keys(fields) as PinRole[]).find((name) => pins[name] === id);
      if (role) pin(role, null);
      else pin(roleOf(made, id), id);
    },
  };
}

const fields = { anchor: 'pinnedAnchor', turn: 'pinnedTurn', belay: 'pinnedBelay' } as const;

/** What the spot is in the study's first layout that uses it. */
function roleOf({ layouts }: Study, id: string): PinRole {
  const layout = layouts.find((one) => one.anchor === id || one.turn === id || one.lines.belay.anchor === id);
  if (layout?.turn === id) return 'turn';
  return layout && layout.anchor !== id && layout.lines.belay.anchor === id ? 'belay' : 'anchor';
}
