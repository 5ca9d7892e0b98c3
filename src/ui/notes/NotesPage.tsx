import type { ReactNode } from 'react';
import { formatLength } from '../../units/index.ts';
import { type DeskState, useDesk } from '../desk-state.ts';
import { inFormWords } from './in-form-words.ts';
import { NumbersBlock } from './NumbersBlock.tsx';
import { OpenForm } from './OpenForm.tsx';
import { ElevationLine } from './Provenance.tsx';
import { RuleBlock } from './RuleBlock.tsx';
import { Sentence } from './Sentence.tsx';
import { SiteList } from './SiteList.tsx';
import { Warnings } from './Warnings.tsx';

/** What is read first: the place and the sentence. */
export function NotesTop() {
  const state = useDesk();
  const site = state.answer?.study.site;
  return (
    <div
      className="notes-top"
      aria-live="polite"
      aria-busy={state.working}
      data-took-ms={state.answer?.tookMs.toFixed(1)}
    >
      {state.place.screen !== 'open' && site && (
        <p className="site-line">
          {siteName(state)}
          {site.road.name ?? 'Unnamed road'}, {formatLength(site.road.stationM, state.units)} along it, {site.sideWords}
        </p>
      )}
      <Sentence words={sentenceNow(state)} />
      {state.stale && <p className="note stale-note">This is from before the point was moved.</p>}
    </div>
  );
}

/** What follows the sentence: rule, numbers, warnings, where the ground comes from. */
export function NotesBody() {
  const { place, answer, district, units } = useDesk();
  const study = answer?.study;
  let body: ReactNode = null;
  if (place.screen === 'open') body = <OpenForm />;
  else if (study) {
    body = (
      <>
        <Warnings warnings={study.warnings} />
        {study.angle && <RuleBlock angle={study.angle} />}
        <NumbersBlock study={study} units={units} />
        <section className="block" aria-label="Elevation">
          <ElevationLine study={study} units={units} />
        </section>
      </>
    );
  } else if (place.screen === 'start' && district?.view.list) body = <SiteList sites={district.view.list.sites} />;
  return <div className="notes-body">{body}</div>;
}

/** The sentence for whatever state the desk is in: loading, failed, empty, working, done. */
function sentenceNow(state: DeskState): string {
  const { place, opening, openProblem, district, answer, problem, working } = state;
  if (place.screen === 'open')
    return opening ?? (openProblem && inFormWords(openProblem)) ?? 'Open your own elevation and roads.';
  if (!district) return openProblem ?? opening ?? 'Starting.';
  if (problem) return problem;
  if (answer) return answer.study.sentence;
  if (working) return 'Reading the ground at the point.';
  const sites = district.view.list?.sites.length ?? 0;
  return `${sites > 0 ? `${sites} sites. Pick one, or tap` : 'Tap'} the map beside a road: the slope below its edge is worked out there.`;
}

function siteName({ district, point }: DeskState): string {
  const site = district?.view.list?.sites.find(({ lon, lat }) => point && near(lon, point.lon) && near(lat, point.lat));
  return site ? `${site.name}. ` : '';
}

/** Equal to the digits that an address carries. */
const near = (a: number, b: number): boolean => Math.abs(a - b) < 2e-7;
