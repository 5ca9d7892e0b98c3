import {
  draftGround,
  type ElevationSource,
  isAging,
  type KeptBench,
  keptBench,
  type StudyRequest,
} from '../io/index.ts';
import { draftStudy, type GroundWork, type Led, ledIn, type Study } from '../study/index.ts';

/** What drafts of a point that moves share: the road bench near by, and what led a moment ago. */
export interface DraftKeeper {
  /** The draft of a question, on exact ground where that is at hand. */
  draft(sources: readonly ElevationSource[], request: StudyRequest, exact: Promise<GroundWork> | null): Promise<Study>;
  /** What led in a study leads the next draft. */
  learn(study: Study): void;
  /** Roads, ground or marks are others now. */
  forget(): void;
}

export function draftKeeper(): DraftKeeper {
  let kept: KeptBench | null = null;
  let led: Led | null = null;
  /** Counts up with every question, so that nothing is found for one that is over. */
  let asked = 0;

  async function groundFor(sources: readonly ElevationSource[], request: StudyRequest): Promise<GroundWork> {
    const mine = asked;
    const found = await draftGround(sources, request, kept);
    if (mine !== asked) return found.work;
    kept = found.kept;
    if (kept && isAging(kept, found.work)) setTimeout(() => void renew(sources, request, mine), 0);
    return found.work;
  }

  /** Finds the bench anew once a draft is answered, unless another is asked first. */
  async function renew(sources: readonly ElevationSource[], request: StudyRequest, mine: number): Promise<void> {
    if (mine !== asked) return;
    const newer = await keptBench(sources, request).catch(() => null);
    if (newer && mine === asked) kept = newer.kept;
  }

  const learn = (study: Study): void => {
    if (study.layouts.length > 0) led = ledIn(study);
  };
  return {
    async draft(sources, request, exact) {
      asked++;
      const work = await (exact ?? groundFor(sources, request));
      const draft = draftStudy(work, { ...request, ground: work.ground }, led);
      learn(draft);
      return draft;
    },
    learn,
    forget() {
      asked++;
      kept = null;
      led = null;
    },
  };
}
