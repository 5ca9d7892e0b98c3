import { type ReactNode, useEffect, useState } from 'react';
import { files, today } from '../book/index.ts';
import { useActions } from '../desk-context.ts';
import { Caution, ElevationLine } from '../notes/Provenance.tsx';
import { ProfilePane } from '../sketch/ProfilePane.tsx';
import { useBook, useDistrict, usePlace, useReading, useStudy } from '../state/index.ts';
import { AnchorsStep } from './AnchorsStep.tsx';
import { BarrierStep } from './BarrierStep.tsx';
import { type CheckDraft, noteCheck, openCheck, useCheck } from './check-draft.ts';
import { GroundStep } from './GroundStep.tsx';
import { KeptWords } from './KeptWords.tsx';
import { KeysPlace } from './Keys.tsx';
import { RadioStep } from './RadioStep.tsx';
import { ReadingStep } from './ReadingStep.tsx';
import { SignStep } from './SignStep.tsx';
import { StepList } from './StepList.tsx';
import type { StepProps } from './step-props.ts';
import { NOT_REACHED, nextStep, steps } from './steps.ts';

/** The roadside check of one site: steps above and the work under them, for one thumb; on a desk beside each other, the slope below. */
export function CheckScreen({ light }: { readonly light: 'day' | 'night' }) {
  const { desk } = useActions();
  const subject = usePlace((state) => state.subject);
  const sites = useBook((state) => state.sites);
  const opening = useDistrict((state) => state.opening);
  const answer = useStudy((state) => state.answer);
  const units = useReading((state) => state.units);
  const draft = useCheck((state) => state.draft);
  const site = subject?.kind === 'site' ? sites.get(subject.id) : undefined;
  const siteId = site?.id;
  const [keysPlace, setKeysPlace] = useState<HTMLElement | null>(null);
  useEffect(() => {
    if (siteId !== undefined) openCheck(siteId, today());
  }, [siteId]);
  // A photo may be taken where nothing can be loaded any more.
  useEffect(() => {
    files();
  }, []);
  if (!site || draft?.siteId !== site.id) {
    return (
      <p className="check-empty" role="status">
        {opening ?? 'This book has no such site. Pick one on the survey screen.'}
      </p>
    );
  }
  const study = answer?.study ?? null;
  const { step, answers } = draft;
  const done = (found: string): void => {
    const now = { ...answers, [step]: found };
    noteCheck({ answers: now, step: nextStep(step, now) });
  };
  const given: StepProps = { site, study, units, today: today(), onDone: done, onCannot: () => done(NOT_REACHED) };
  const at = steps.findIndex(({ name }) => name === step);
  return (
    <article className="check" aria-label={`Roadside check of ${site.name}`}>
      <div className="check-list">
        <header className="check-head">
          <h1>{site.name}, check</h1>
          <KeptWords />
          <button type="button" className="key-quiet" onClick={() => desk.goTo('study')}>
            leave
          </button>
        </header>
        <StepList
          {...{ study, units, answers }}
          radio={site.radio}
          current={step}
          onPick={(name) => noteCheck({ step: name })}
        />
      </div>
      <section className="check-work" aria-labelledby="check-step">
        <h2 id="check-step">
          {steps[at]!.title}
          <span className="num">
            {at + 1} of {steps.length}
          </span>
        </h2>
        <div key={step} className="check-body">
          <KeysPlace value={keysPlace}>{workOf(draft, given)}</KeysPlace>
        </div>
        <div className="check-foot">
          <div ref={setKeysPlace} />
          <Caution />
        </div>
        {study && <ElevationLine study={study} units={units} />}
      </section>
      <ProfilePane light={light} />
    </article>
  );
}

function workOf({ step, answers }: CheckDraft, given: StepProps): ReactNode {
  switch (step) {
    case 'edge':
      return <ReadingStep {...given} quantity="edgeToAnchorM" />;
    case 'angle':
      return <ReadingStep {...given} quantity="angleDeg" />;
    case 'barrier':
      return <BarrierStep {...given} />;
    case 'ground':
      return <GroundStep {...given} />;
    case 'anchors':
      return <AnchorsStep {...given} />;
    case 'radio':
      return <RadioStep {...given} />;
    case 'up':
      return <ReadingStep {...given} quantity="slopeAboveDeg" />;
    case 'sign':
      return <SignStep {...given} answers={answers} />;
  }
}
