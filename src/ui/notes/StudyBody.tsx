import { lazy, Suspense } from 'react';
import { type Command, KeyList } from '../commands/index.ts';
import { ShareBlock } from '../share/index.ts';
import { shownStudy, usePlace, useReading, useStudy } from '../state/index.ts';
import { ConditionSwitch, LayoutsBlock, PeopleBlock, PlacesBlock, TakenBlock, WaysBlock } from '../study/index.ts';
import { MarkInHand, PlaceInHand } from '../survey/index.ts';
import { NumbersBlock } from './NumbersBlock.tsx';
import { ElevationLine } from './Provenance.tsx';
import { RuleBlock } from './RuleBlock.tsx';
import { Warnings } from './Warnings.tsx';

const SitePhotos = lazy(async () => ({ default: (await import('../book/photos/index.ts')).SitePhotos }));

/** What follows the sentence of a study, block by block. */
export function StudyBody({ commands }: { readonly commands: readonly Command[] }) {
  const study = useStudy(shownStudy);
  const whole = useStudy((state) => state.answer?.study);
  const units = useReading((state) => state.units);
  const subject = usePlace((state) => state.subject);
  if (!study) return null;
  const siteId = subject?.kind === 'site' ? subject.id : null;
  return (
    <>
      <Warnings warnings={study.warnings} />
      <LayoutsBlock study={study} units={units} />
      <WaysBlock study={study} units={units} />
      {siteId && <PlacesBlock study={study} siteId={siteId} units={units} />}
      <PeopleBlock study={study} />
      {study.angle && <RuleBlock angle={study.angle} />}
      <ConditionSwitch />
      <TakenBlock study={study} siteId={siteId} units={units} />
      <NumbersBlock study={study} units={units} />
      <MarkInHand />
      <PlaceInHand />
      {siteId && (
        <Suspense fallback={null}>
          <SitePhotos siteId={siteId} />
        </Suspense>
      )}
      <section className="block" aria-label="Elevation">
        <ElevationLine study={study} units={units} />
      </section>
      {siteId && whole && <ShareBlock key={siteId} study={whole} siteId={siteId} />}
      <KeyList commands={commands} />
    </>
  );
}
