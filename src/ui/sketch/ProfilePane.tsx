import { lazy, type RefObject, Suspense, useLayoutEffect, useMemo, useRef } from 'react';
import { profileScale, profileSvg } from '../../plan/index.ts';
import { shownStudy, useReading, useStudy } from '../state/index.ts';
import { WhyMargin } from '../study/index.ts';
import { drawingOf } from './drawing.ts';
import { Scrub } from './Scrub.tsx';
import { useSize } from './use-size.ts';
import { useUpper } from './use-upper.ts';

/** Not a part of what must be there first: it brings the map projection along. */
const PairSheet = lazy(async () => ({ default: (await import('./PairSheet.tsx')).PairSheet }));

type Light = 'day' | 'night';

/** The right page of a study: under the map the profile, else plan view and profile as one; and the margin where a number says why. */
export function ProfilePane({ light }: { readonly light: Light }) {
  const stale = useStudy((state) => state.stale);
  const pane = useRef<HTMLElement>(null);
  const isPair = useUpper() === 'pair';
  return (
    <section
      ref={pane}
      className={`profile-pane${isPair ? ' is-pair' : ''}${stale ? ' is-stale' : ''}`}
      aria-label={isPair ? 'Plan view and profile' : 'Profile'}
    >
      {isPair ? (
        <Suspense>
          <PairSheet light={light} />
        </Suspense>
      ) : (
        <ProfileSheet light={light} pane={pane} />
      )}
      <WhyMargin />
    </section>
  );
}

/** The true-scale profile, the same drawing as on paper, as large as its pane; a station under the mouse shows on the map too. */
function ProfileSheet({ light, pane }: { readonly light: Light; readonly pane: RefObject<HTMLElement | null> }) {
  const study = useStudy(shownStudy);
  const units = useReading((state) => state.units);
  const paper = useRef<HTMLDivElement>(null);
  const size = useSize(pane);
  const profiled = study?.profile ? study : null;
  const svg = useMemo(
    () =>
      profiled && size
        ? profileSvg(profiled, { units, ...size, palette: light === 'night' ? 'night' : 'light' })
        : null,
    [profiled, size, units, light],
  );
  const scale = useMemo(
    () => (profiled && size ? profileScale(profiled, size.width, size.height) : null),
    [profiled, size],
  );
  useLayoutEffect(() => {
    const drawing = svg === null ? [] : [drawingOf(svg)];
    paper.current?.replaceChildren(...drawing);
  }, [svg]);
  return (
    <>
      <div ref={paper} className="profile-paper" data-testid="profile" />
      {profiled && size && scale && <Scrub study={profiled} scale={scale} width={size.width} units={units} />}
      {!profiled && <EmptyProfile asked={study !== null} />}
    </>
  );
}

/** Neat line and what to do, in the place of the missing drawing. */
const EmptyProfile = ({ asked }: { readonly asked: boolean }) => (
  <p className="profile-empty">
    {asked ? 'No profile: there is no descent on this side.' : 'The slope below the edge is drawn here at true scale.'}
  </p>
);
