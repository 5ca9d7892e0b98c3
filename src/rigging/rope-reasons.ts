import { idealAdvantage, stagesOf } from './advantage.ts';
import type { Haul, HaulArrangement, HaulGround } from './haul.ts';
import type { HaulSettings } from './haul-settings.ts';
import { type Reason, reason } from './reason.ts';

/** Reasons for throw, landing, pulls and rope of a worked-out haul; inputs that are rates bear their rate's name. */
export function ropeReasons(ground: HaulGround, run: HaulArrangement, settings: HaulSettings, haul: Haul): Reason[] {
  const turned = run.kind === 'turned';
  const builtIn = run.system === 'built in';
  const n = idealAdvantage(run.advantage);
  const { bridleM, tailsM, pastCaptureM } = settings;
  const belowEdge = 'max(ropeLineM, groundLengthM) + bridleM';
  const below = { ropeLineM: ground.ropeLineM, groundLengthM: ground.groundLengthM, bridleM };
  const { edgeToTurnM, fieldM } = run;
  const mainParts =
    turned && !builtIn
      ? `${belowEdge} + edgeToTurnM + pastCaptureM`
      : `${belowEdge}${turned ? ' + edgeToTurnM' : ''} + fieldM + tailsM`;
  const main = { ...below, edgeToTurnM, fieldM, tailsM, pastCaptureM, n, throwM: haul.throwM };
  const room = turned ? 'edgeToTurnM' : 'fieldM - collapsedM';
  return [
    ...throwReasons(run, settings, haul, mainParts, main),
    reason('landing past the edge', haul.landingM, 'm', `max(0, min(landingM, ${room} - landingGapM))`, {
      landingM: settings.landingM,
      edgeToTurnM,
      fieldM,
      collapsedM: settings.collapsedM,
      landingGapM: settings.landingGapM,
    }),
    reason('raise', haul.raiseM, 'm', 'ropeLineM + landing', { ropeLineM: ground.ropeLineM, landing: haul.landingM }),
    reason('pulls', haul.pulls, '', 'ceil((raise + ropeStretch * stretched) / (throwM - sitBackM))', {
      raise: haul.raiseM,
      ropeStretch: settings.ropeStretch,
      stretched: settings.ropeStretch > 0 ? haul.stretchM / settings.ropeStretch : 0,
      throwM: haul.throwM,
      sitBackM: settings.sitBackM,
    }),
    reason('resets', haul.resets, '', 'pulls - 1', { pulls: haul.pulls }),
    reason('new grips in a pull', haul.regripsPerPull, '', 'max(0, ceil(n * throwM / walkingRoomM) - 1)', {
      n,
      throwM: haul.throwM,
      walkingRoomM: run.walkingRoomM,
    }),
    reason('main line', haul.ropeM.main, 'm', builtIn ? `${mainParts} + (n - 1) * throwM` : mainParts, main),
    reason('belay line', haul.ropeM.belay, 'm', `${belowEdge} + belayRunM + tailsM`, {
      ...below,
      belayRunM: run.belayRunM,
      tailsM,
    }),
    ...(haul.ropeM.haul === null
      ? []
      : [reason('haul line', haul.ropeM.haul, 'm', 'n * throwM + tailsM', { n, throwM: haul.throwM, tailsM })]),
  ];
}

/** The throw by the field, or by the rope where that is shorter; the field's clearances stand in either case. */
function throwReasons(
  run: HaulArrangement,
  { clearanceNearM, clearanceAnchorM, tailsM }: HaulSettings,
  haul: Haul,
  mainParts: string,
  main: Reason['inputs'],
): Reason[] {
  const onLoad = stagesOf(run.advantage)
    .slice(0, -1)
    .reduce((a, b) => a * b, 1);
  const byField = (what: string): Reason =>
    reason(
      what,
      Math.max(0, run.fieldM - clearanceNearM - clearanceAnchorM) / onLoad,
      'm',
      'max(0, fieldM - clearanceNearM - clearanceAnchorM) / onLoad',
      { fieldM: run.fieldM, clearanceNearM, clearanceAnchorM, onLoad },
    );
  if (haul.throwLimitedBy !== 'rope') return [byField('throw')];
  const byRope = (formula: string, inputs: Reason['inputs']): Reason =>
    reason('throw', haul.throwM, 'm', formula, inputs);
  const n = idealAdvantage(run.advantage);
  const ropeM = run.throwRopeM ?? 0;
  const { throwM: _, ...inputs } = main;
  const shorter =
    run.system === 'built in'
      ? byRope(`max(0, (ropeM - (${mainParts})) / (n - 1))`, { ...inputs, ropeM })
      : byRope('max(0, (ropeM - tailsM) / n)', { ropeM, tailsM, n });
  return [shorter, byField('throw by the field')];
}
