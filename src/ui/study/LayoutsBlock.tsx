import type { Study, StudyLayout } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';
import { useSketch, useStudy } from '../state/index.ts';
import { ChosenLayout } from './ChosenLayout.tsx';
import { Figure } from './Figure.tsx';
import { layoutName } from './layout-words.ts';
import { PinRows } from './PinRows.tsx';
import { resetShares } from './pull-bar.ts';
import { whyOrigin, whyReason } from './why.ts';

const RULER_PX = 300;
const FIELD_PX = 240;

/** Best turned and best straight haul to one scale, the others named; the chosen one is drawn on the map and worked out below. */
export function LayoutsBlock({ study, units }: { readonly study: Study; readonly units: UnitSystem }) {
  const { layouts, angle } = study;
  const chosenId = useSketch((state) => state.layoutId);
  const pinned = useStudy((state) => Object.keys(state.pins).length > 0);
  const drafted = useStudy((state) => state.draft !== null);
  if (layouts.length === 0 && drafted) return <StillSought />;
  if (layouts.length === 0) return pinned ? <NothingAroundPins study={study} units={units} /> : null;
  const chosen = layouts.find(({ id }) => id === chosenId) ?? layouts[0]!;
  const best = (['turned', 'straight'] as const).flatMap((kind) => layouts.find((one) => one.kind === kind) ?? []);
  const others = layouts.filter((one) => !best.includes(one));
  const high = angle?.planAs === 'high';
  const longest = Math.max(...best.map(({ haulFieldM }) => haulFieldM), 1);
  const body = (
    <>
      <fieldset className="layouts">
        <legend className="unseen">Layout that is drawn</legend>
        {best.map((layout) => (
          <LayoutRow key={layout.id} {...{ study, layout, units, high, longest }} chosen={layout === chosen} />
        ))}
        {others.length > 0 && (
          <div className="other-layouts">
            {others.map((layout) => (
              <Choice key={layout.id} layout={layout} chosen={layout === chosen}>
                {layoutName(layout)}, {layout.mechanicalAdvantage}, {formatLength(layout.haulFieldM, units, 'down')}:{' '}
                {resetWords(layout.resets)}
              </Choice>
            ))}
          </div>
        )}
      </fieldset>
      <ChosenLayout {...{ study, units, high }} layout={chosen} />
    </>
  );
  const head = `Raising ${formatLength(chosen.raiseM, units, 'up')}, pull by pull`;
  if (high) {
    return (
      <details className="block technical">
        <summary>For the technical team</summary>
        <h2>{head}</h2>
        {body}
      </details>
    );
  }
  return (
    <section className="block" aria-labelledby="layouts-head">
      <div className="block-head">
        <h2 id="layouts-head">{head}</h2>
        <span className="note">
          {drafted
            ? 'from a quick look while the point moves: a better way may come'
            : 'fields to one scale; each gap is a reset'}
        </span>
      </div>
      {body}
    </section>
  );
}

/** A quick look that found none says nothing of what the whole search will find. */
const StillSought = () => (
  <section className="block" aria-label="Layouts">
    <p className="note">Hauls are being worked out.</p>
  </section>
);

/** What is pinned stays listed when no layout works around it. */
const NothingAroundPins = ({ study, units }: { readonly study: Study; readonly units: UnitSystem }) => (
  <section className="block" aria-label="Pinned">
    <p>No layout works around what is pinned. Unpin it or choose another.</p>
    <PinRows study={study} layout={null} units={units} />
  </section>
);

const resetWords = (resets: number): string => `${resets} ${resets === 1 ? 'reset' : 'resets'}`;

function Choice({ layout, chosen, children }: { layout: StudyLayout; chosen: boolean; children: React.ReactNode }) {
  return (
    <label className={chosen ? 'choice is-chosen' : 'choice'}>
      <input
        type="radio"
        name="layout"
        checked={chosen}
        onChange={() => useSketch.setState({ layoutId: layout.id, why: null })}
      />
      <span>{children}</span>
    </label>
  );
}

interface RowProps {
  readonly study: Study;
  readonly layout: StudyLayout;
  readonly chosen: boolean;
  readonly units: UnitSystem;
  readonly high: boolean;
  readonly longest: number;
}

/** One layout: its field as a ruler, the raise cut into pulls, what it takes. */
function LayoutRow({ study, layout, chosen, units, high, longest }: RowProps) {
  const { haulFieldM, throwM, team, liftedByHandM, regripsPerPull, lanesBlocked, mechanicalAdvantage, system } = layout;
  const key = (what: string): string => `${layout.id} ${what}`;
  const width = (haulFieldM / longest) * FIELD_PX;
  return (
    <div className={chosen ? 'layout-row is-chosen' : 'layout-row'}>
      <div className="layout-line">
        <Choice layout={layout} chosen={chosen}>
          {layoutName(layout)}
        </Choice>
        <svg className="field-ruler" viewBox={`-1 0 ${RULER_PX} 14`} aria-hidden="true">
          <path className="ruler-body" d={`M0 2H${width}V12H0Z`} />
          <path className="ruler-tick" d={[0.25, 0.5, 0.75].map((t) => `M${t * width} 2v4`).join('')} />
        </svg>
        <Figure why={{ ...whyOrigin(study, 'layouts.haulFieldM', 'haul field'), key: key('field') }}>
          {formatLength(haulFieldM, units, 'down')}
        </Figure>
        <Figure why={whyReason(layout, key('resets'), resetWords(layout.resets), 'throw', 'raise', 'pulls', 'resets')}>
          {resetWords(layout.resets)}
        </Figure>
      </div>
      <svg className="pull-bar" viewBox="0 0 500 14" preserveAspectRatio="none" aria-hidden="true">
        <path className="pull-rope" d="M0 7H500" />
        <path
          className="pull-reset"
          d={['M1 0V14M499 0V14', ...resetShares(layout).map((t) => `M${t * 500} 0V14`)].join('')}
        />
      </svg>
      <p className="note num">
        {mechanicalAdvantage}, {system}, throw{' '}
        <Figure why={whyReason(layout, key('throw'), 'throw', 'throw')}>{formatLength(throwM, units, 'down')}</Figure>
        {!high && (
          <>
            {' · '}
            <Figure why={whyReason(layout, key('team'), 'haul team', 'hand pull', 'haul team')}>
              {team.walking} haul
            </Figure>
            {team.allHang > team.walking && ` (${team.allHang} if attendants hang)`}
          </>
        )}
        {regripsPerPull > 0 && ` · ${regripsPerPull} re-${regripsPerPull === 1 ? 'grip' : 'grips'} a pull`}
        {liftedByHandM > 0.05 && ` · last ${formatLength(liftedByHandM, units, 'up')} by hand`}
        {` · ${lanesBlocked} ${lanesBlocked === 1 ? 'lane' : 'lanes'} blocked`}
      </p>
      <p className="note">{layout.why[0]}</p>
    </div>
  );
}
