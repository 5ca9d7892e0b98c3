/** @jsxImportSource preact */
import { appFolder, type CallSite } from '../../../io/offline/index.ts';
import { mileText } from '../../../road/index.ts';
import { isNoHaul, STOP_LINE, type Study } from '../../../study/index.ts';
import { type CallPlan, callPlan, MiniProfile } from '../plan/index.ts';
import { Ahead } from './Ahead.tsx';
import { ConditionSwitch } from './Conditions.tsx';
import { dayWords } from './day-words.ts';
import { FromBook } from './FromBook.tsx';
import { Neighbours } from './Neighbours.tsx';
import { NextStep } from './NextStep.tsx';
import { PlanRows } from './PlanRows.tsx';
import { Sheet } from './Sheet.tsx';
import { siteWords } from './site-words.ts';
import { Unworked } from './Unworked.tsx';
import { useCall, useCallState } from './use-call.ts';

/** One site, or one roadside worked out on the spot: the plan at a glance. The study's sentence comes first to a reader's ear. */
export function SitePlan() {
  const { place, pack, study, stale, working, problem, studyKeptAtMs } = useCallState();
  if (place.kind !== 'site' && place.kind !== 'spot') return null;
  const site = place.kind === 'site' ? pack?.sites.find(({ id }) => id === place.id) : undefined;
  const name = place.kind === 'site' ? (site?.name ?? place.id) : 'Not surveyed';
  const units = pack?.units ?? 'us';
  const plan = study && callPlan(study, units, site);
  return (
    <article class={stale ? 'plan stale' : 'plan'} aria-busy={working}>
      {study && (
        <p class="heard" data-testid="sentence">
          {study.sentence}
        </p>
      )}
      <header class="who">
        <h1>{name}</h1>
        {site && <Ahead to={site} />}
        {place.kind === 'spot' && <Ahead to={place.at} />}
      </header>
      <p class="where">
        {study ? whereWords(study, site) : site ? siteWords(site) : place.kind === 'spot' ? place.words : ''}
      </p>
      {place.kind === 'spot' && <p class="alarm">Worked out just now from elevation alone. Nobody has surveyed it.</p>}
      {problem && (
        <p class="alarm" role="alert">
          {problem}
        </p>
      )}
      <StaleLine />
      {!study && working && <p class="lead">Working it out from the elevation on this device …</p>}
      {site && !study && (problem || pack?.withoutStudy?.includes(site.id)) && <Unworked site={site} />}
      {plan && study && <PlanOf plan={plan} study={study} />}
      {study && (
        <p class="data num">
          {plan!.data}
          {studyKeptAtMs === null
            ? ''
            : ` ${pack?.publishedAtMs === undefined ? 'Kept' : 'Published'} ${dayWords(studyKeptAtMs)}.`}
        </p>
      )}
      {site && <Neighbours site={site} />}
      {study && <Whole study={study} name={name} site={site ?? null} />}
    </article>
  );
}

function PlanOf({ plan, study }: { plan: CallPlan; study: Study }) {
  const high = plan.planAs === 'high';
  return (
    <>
      {high && <p class="stop-line">{STOP_LINE}</p>}
      {plan.stops.map((text) => (
        <p key={text} class="alarm">
          {text}
        </p>
      ))}
      {plan.planAs && (
        <div class={`class ${plan.planAs}`}>
          <div class="big">
            <small>{plan.undecided ? 'Undecided, plan as' : plan.measured ? 'Measured, plan as' : 'Plan as'}</small>
            <b>{plan.planAs}</b>
            <span class="num">
              {plan.angle}
              <em>, {plan.range}</em>
            </span>
          </div>
          <MiniProfile study={study} />
        </div>
      )}
      <PlanRows plan={plan} />
      {plan.planAs && <ConditionSwitch />}
      {plan.next && <NextStep next={plan.next} high={high} />}
    </>
  );
}

/** What the shown numbers are not for, while others are worked out or when they cannot be. */
function StaleLine() {
  const call = useCall();
  const { stale, working, circumstances, study } = useCallState();
  if (!stale || !study) return null;
  const wanted = [
    circumstances.weather,
    ...(circumstances.night ? ['night'] : []),
    ...(circumstances.wind ? ['wind'] : []),
  ];
  const { wet, ice, night, wind } = study.given.conditions;
  const shown = [ice ? 'ice' : wet ? 'wet' : 'dry', ...(night ? ['night'] : []), ...(wind ? ['wind'] : [])];
  return (
    <p class="alarm">
      {working ? `Working it out for ${wanted.join(', ')}; ` : `Not worked out for ${wanted.join(', ')}: `}
      the numbers below are for {shown.join(', ')}.
      {!working && (
        <button type="button" class="plain" onClick={() => call.setWeather(circumstances.weather)}>
          Try again
        </button>
      )}
    </p>
  );
}

/** Below the first screen: the sentence to read aloud, what to check, and the way to the whole study. */
function Whole({ study, name, site }: { study: Study; name: string; site: CallSite | null }) {
  const checks = study.warnings.filter((one) => one.severity === 'check' || isNoHaul(one));
  const { lon, lat, side } = study.site;
  const { pack } = useCallState();
  return (
    <section class="whole">
      <h2>To say on the radio</h2>
      <p aria-hidden="true">{study.sentence}</p>
      {checks.length > 0 && <h2>To check on site</h2>}
      <ul>
        {checks.map(({ code, text }) => (
          <li key={code + text}>{text}</li>
        ))}
      </ul>
      {site && <FromBook study={study} site={site} />}
      <Sheet study={study} name={name} site={site} />
      {pack?.publishedAtMs === undefined && (
        <p>
          <a class="plain" href={`${appFolder().href}#/study/${lon.toFixed(7)},${lat.toFixed(7)},${side}`}>
            The whole study
          </a>
        </p>
      )}
    </section>
  );
}

const whereWords = ({ site }: Study, listed: CallSite | undefined): string =>
  [
    site.road.name ?? 'Road without a name',
    ...(listed?.mile == null ? [] : [`mile ${mileText(listed.mile)}`]),
    site.sideWords,
  ].join(', ');
