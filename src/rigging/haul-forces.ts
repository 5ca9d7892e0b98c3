import type { Anchor } from './anchor.ts';
import type { Conditions } from './conditions.ts';
import { type AnchorSettings, type ForceCheck, holdCheck, strengthCheck } from './force-check.ts';
import type { Haul } from './haul.ts';
import type { PlanVector } from './plan-vector.ts';
import { type PlanForce, turnForce } from './turn-force.ts';

/** What each line of a haul is tied to, and where it pulls in plan: x east, y north, any length. */
export interface HaulAnchors {
  /** Of the haul system; in a straight haul also of device and capture. */
  readonly main: Anchor;
  /** Change of direction with device and capture, and the way from it to the main anchor; null in a straight haul. */
  readonly turn: { readonly anchor: Anchor; readonly towardMain: PlanVector } | null;
  readonly belay: Anchor;
  /** Where the hauling end turns, and the ways from there to the system and along the team; null where it does not. */
  readonly handTurn: {
    readonly anchor: Anchor;
    readonly towardSystem: PlanVector;
    readonly alongTeam: PlanVector;
  } | null;
  /** From the turn, or the main anchor of a straight haul, to the edge. */
  readonly mainTowardEdge: PlanVector;
  readonly belayTowardEdge: PlanVector;
}

export interface ForceSettings extends AnchorSettings {
  /** Static factor on a force that is held, such as by the capture or the belay. */
  readonly heldFactor: number;
  /** Static factor on a force that lasts only while people pull, with all hanging. */
  readonly haulingFactor: number;
}

/**
 * Every force of a haul on its anchors, each with its direction. In a turned haul the capture stands at the change of
 * direction: held, that carries one tension; hauling, the resultant of both legs. Main and belay on one apparatus take an
 * attachment each; one load hangs from either, never from both at once, so each hold stands against its own force.
 */
export function haulForces(
  haul: Pick<Haul, 'tensionKn' | 'farKn' | 'pullKn'>,
  anchors: HaulAnchors,
  conditions: Conditions,
  settings: ForceSettings,
): ForceCheck[] {
  const { main, turn, belay, handTurn } = freeAttachments(anchors);
  const held = along(haul.tensionKn.held, anchors.mainTowardEdge);
  const hold = (at: string, anchor: Anchor, force: PlanForce): ForceCheck =>
    holdCheck(at, anchor, force, conditions, settings);
  const strong = (at: string, kind: 'strength' | 'turn' | 'belay', anchor: Anchor, force: PlanForce): ForceCheck =>
    strengthCheck(
      { at, kind },
      anchor,
      force,
      kind === 'turn' ? settings.haulingFactor : settings.heldFactor,
      settings,
    );
  const hauling = (at: string, anchor: Anchor, force: PlanForce): ForceCheck =>
    strengthCheck({ at, kind: 'strength' }, anchor, force, settings.haulingFactor, settings);

  const checks: ForceCheck[] = [];
  if (turn) {
    const bent = turnForce(haul.tensionKn.hanging, anchors.mainTowardEdge, haul.farKn.hanging, turn.towardMain);
    const pull = along(haul.farKn.hanging, { x: -turn.towardMain.x, y: -turn.towardMain.y });
    const at = 'change of direction';
    checks.push(hold(`${at}, hauling`, turn.anchor, bent), hold(`${at}, held`, turn.anchor, held));
    checks.push(
      strong(`${at}, hauling`, 'turn', turn.anchor, bent),
      strong(`${at}, held`, 'strength', turn.anchor, held),
    );
    checks.push(hold('main anchor, hauling', main, pull), hauling('main anchor, hauling', main, pull));
  } else {
    const pull = along(haul.tensionKn.hanging, anchors.mainTowardEdge);
    checks.push(hold('main anchor, hauling', main, pull), hauling('main anchor, hauling', main, pull));
    checks.push(hold('main anchor, held', main, held), strong('main anchor, held', 'strength', main, held));
  }
  const caught = along(haul.tensionKn.belay, anchors.belayTowardEdge);
  checks.push(hold('belay anchor', belay, caught), strong('belay anchor', 'belay', belay, caught));
  if (handTurn) {
    const hand = haul.pullKn.hanging;
    const force = turnForce(hand, handTurn.towardSystem, hand, handTurn.alongTeam);
    checks.push(hold('turn of the hauling end', handTurn.anchor, force));
    checks.push(hauling('turn of the hauling end', handTurn.anchor, force));
  }
  return checks;
}

const along = (kn: number, direction: PlanVector): PlanForce => turnForce(kn, direction, 0, direction);

/** Lines on one apparatus share its attachments evenly, so that two-point ties never take one twice. */
function freeAttachments(anchors: HaulAnchors): Pick<HaulAnchors, 'main' | 'turn' | 'belay' | 'handTurn'> {
  const lines = [anchors.main, anchors.turn?.anchor, anchors.belay, anchors.handTurn?.anchor].filter(
    (a) => a !== undefined,
  );
  const free = (anchor: Anchor): Anchor => {
    if (anchor.kind !== 'apparatus') return anchor;
    const sharing = lines.filter((line) => line.kind === 'apparatus' && line.id === anchor.id).length;
    return { ...anchor, attachments: Math.max(0, Math.floor(anchor.attachments / sharing)) };
  };
  return {
    main: free(anchors.main),
    turn: anchors.turn && { ...anchors.turn, anchor: free(anchors.turn.anchor) },
    belay: free(anchors.belay),
    handTurn: anchors.handTurn && { ...anchors.handTurn, anchor: free(anchors.handTurn.anchor) },
  };
}
