import { lazy, memo, Suspense, useDeferredValue } from 'react';
import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
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
  const whole = useStudy((state) => state.answer?.study ?? null);
  const units = useReading((state) => state.units);
  const subject = usePlace((state) => state.subject);
  // While a point moves, what stands farther down waits until the layouts have been painted.
  const later = useDeferredValue(study);
  if (!study) return null;
  const siteId = subject?.kind === 'site' ? subject.id : null;
  return (
    <>
      <Warnings warnings={study.warnings} />
      <LayoutsBlock study={study} units={units} />
      <WaysBlock study={study} units={units} />
      {siteId && <PlacesBlock study={study} siteId={siteId} units={units} />}
      <PeopleBlock study={study} />
      <FartherDown study={later ?? study} {...{ whole, siteId, units, commands }} />
    </>
  );
}

interface FartherProps {
  readonly study: Study;
  /** What is written down and given away stands on this one: never on a draft. */
  readonly whole: Study | null;
  readonly siteId: string | null;
  readonly units: UnitSystem;
  readonly commands: readonly Command[];
}

const FartherDown = memo(function FartherDown({ study, whole, siteId, units, commands }: FartherProps) {
  return (
    <>
      {study.angle && <RuleBlock angle={study.angle} />}
      <ConditionSwitch />
      {whole && <TakenBlock study={whole} siteId={siteId} units={units} />}
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
});
