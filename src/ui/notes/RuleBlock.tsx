import { angleRules } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';
import { formatAngleRange, formatDegrees, formatPercent } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { useGiven } from '../state/index.ts';
import { weightWords } from './study-rows.ts';

const FROM_DEG = 10;
const TO_DEG = 70;
const WIDTH = 300;
const px = (deg: number): number =>
  ((Math.min(TO_DEG, Math.max(FROM_DEG, deg)) - FROM_DEG) / (TO_DEG - FROM_DEG)) * WIDTH;

/** The governing angle on a scale of degrees with every rule's limits under it; picking a rule works the study out again. */
export function RuleBlock({ angle }: { readonly angle: NonNullable<Study['angle']> }) {
  const { desk } = useActions();
  const ruleName = useGiven((state) => state.ruleName);
  const ownRules = useGiven((state) => state.ownRules);
  const [low, high] = angle.rangeDeg;
  return (
    <section className="block" aria-labelledby="rule-head">
      <div className="block-head">
        <h2 id="rule-head">Angle and rule</h2>
        <span className="note">{weightWords(angle)}</span>
      </div>
      <fieldset className="rules">
        <legend className="unseen">Angle rule</legend>
        <div className="rule-row rule-scale">
          <span className="rule-name num">{formatDegrees(angle.governingDeg)}</span>
          <AngleScale value={angle.governingDeg} low={low} high={high} />
          <span className="rule-word note">{formatAngleRange(low, high)} (5 to 95 %)</span>
        </div>
        {[...angleRules, ...ownRules].map((rule) => (
          <label className="rule-row" key={rule.name}>
            <span className="rule-name num">
              <input
                type="radio"
                name="rule"
                checked={rule.name === ruleName}
                onChange={() => desk.setRule(rule.name)}
              />
              {rule.name}
            </span>
            <RuleBar low={rule.lowMaxDeg} high={rule.highMinDeg} value={angle.governingDeg} />
            <span className="rule-word">{rule.name === angle.rule.name && classWords(angle)}</span>
          </label>
        ))}
      </fieldset>
    </section>
  );
}

function classWords(angle: NonNullable<Study['angle']>): string {
  if (angle.class === 'undecided') return `undecided, as ${angle.planAs}`;
  const words = `${angle.class}, ${formatPercent(angle.probability[angle.class])}`;
  return angle.planAs === angle.class ? words : `${words}; plan as ${angle.planAs}`;
}

function AngleScale({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }) {
  const ticks = Array.from({ length: (TO_DEG - FROM_DEG) / 5 + 1 }, (_, i) => FROM_DEG + 5 * i);
  return (
    <svg className="scale" viewBox={`-4 0 ${WIDTH + 8} 30`} aria-hidden="true">
      <path
        className="pen-fine"
        d={`M0 14H${WIDTH}${ticks.map((t) => `M${px(t)} 14v${t % 10 === 0 ? 4 : 2.5}`).join('')}`}
      />
      {ticks
        .filter((t) => t % 20 === 10)
        .map((t) => (
          <text key={t} className="scale-figure" x={px(t)} y={28} textAnchor="middle">
            {t}°
          </text>
        ))}
      <path className="pen-range" d={`M${px(low)} 14H${Math.max(px(high), px(low) + 2)}`} />
      <path className="pen-value" d={`M${px(value)} 4V14`} />
    </svg>
  );
}

function RuleBar({ low, high, value }: { readonly low: number; readonly high: number; readonly value: number }) {
  return (
    <svg className="scale" viewBox={`-4 0 ${WIDTH + 8} 16`} aria-hidden="true">
      <path className="pen-fine dotted" d={`M${px(value)} 0V16`} />
      <path className="pen" d={`M${px(low)} 8H${px(high)}M${px(low)} 4v8M${px(high)} 4v8`} />
    </svg>
  );
}
