import { lazy, type ReactNode, Suspense } from 'react';
import { type Command, KeyList } from '../commands/index.ts';
import { shownStudy, useBook, useDistrict, usePlace, useStudy } from '../state/index.ts';
import { MarkInHand, PlaceInHand, SitePanel, SurveyNotes } from '../survey/index.ts';
import { DeskSentence } from './DeskSentence.tsx';
import { PersistAsk } from './PersistAsk.tsx';
import { SiteLine } from './SiteLine.tsx';

/** Own files are not what a start is for. */
const OpenForm = lazy(async () => ({ default: (await import('./OpenForm.tsx')).OpenForm }));
const BasemapBlock = lazy(async () => ({ default: (await import('../own/BasemapBlock.tsx')).BasemapBlock }));
/** The first study takes longer to be worked out than this takes to load. */
const StudyBody = lazy(async () => ({ default: (await import('./StudyBody.tsx')).StudyBody }));

/** What is read first: the place and the sentence. */
export function NotesTop() {
  const working = useStudy((state) => state.working);
  const tookMs = useStudy(({ draft, answer }) => (draft ?? answer)?.tookMs);
  const drafted = useStudy((state) => state.draft !== null);
  const site = useStudy((state) => shownStudy(state)?.site);
  const stale = useStudy((state) => state.stale);
  const screen = usePlace((state) => state.screen);
  // Another district stands in for the one that did not open: that must not pass for the one wanted.
  const notOpened = useDistrict(({ district, problem }) => (district ? problem : null));
  return (
    <div
      className="notes-top"
      aria-live="polite"
      aria-busy={working}
      data-took-ms={tookMs?.toFixed(1)}
      data-draft={drafted || undefined}
    >
      {screen !== 'open' && site && <SiteLine site={site} />}
      {screen !== 'open' && notOpened && (
        <p className="note" role="alert">
          {notOpened}
        </p>
      )}
      <DeskSentence />
      {stale && <p className="note stale-note">This is from before the point was moved.</p>}
    </div>
  );
}

/** What follows the sentence, screen by screen. */
export function NotesBody({ commands }: { readonly commands: readonly Command[] }) {
  const { screen, subject } = usePlace();
  const site = useBook((state) => (subject?.kind === 'site' ? state.sites.get(subject.id) : undefined));
  let body: ReactNode = null;
  if (screen === 'open') {
    body = (
      <Suspense fallback={null}>
        <OpenForm />
        <BasemapBlock />
      </Suspense>
    );
  } else if (screen === 'study') {
    body = (
      <Suspense fallback={null}>
        <StudyBody commands={commands} />
      </Suspense>
    );
  } else {
    body = (
      <>
        <MarkInHand />
        <PlaceInHand />
        {site && <PersistAsk />}
        {site && <SitePanel key={site.id} site={site} />}
        <SurveyNotes />
        <KeyList commands={commands} />
      </>
    );
  }
  return <div className="notes-body">{body}</div>;
}
