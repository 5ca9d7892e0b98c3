import { useEffect, useRef } from 'react';
import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { isAwaited, useStudy } from '../state/index.ts';
import { computedWords } from './computed-words.ts';
import { type Answers, inkedSteps, NOT_REACHED, type StepName, steps } from './steps.ts';

/** The steps beside a tape that inks as they are done; each can be gone back to. */
export function StepList({ study, radio, units, current, answers, onPick }: Props) {
  const list = useRef<HTMLOListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the step in hand stays in sight, also when the work beside it grows.
  useEffect(() => {
    const box = list.current?.closest('.check-list');
    if (!box) return;
    const seen = new ResizeObserver(() =>
      list.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest' }),
    );
    seen.observe(box);
    return () => seen.disconnect();
  }, [current]);
  const awaited = useStudy(isAwaited);
  const inked = (100 * inkedSteps(answers)) / steps.length;
  return (
    <div className="check-steps">
      <p className="check-columns">
        <span>step, about 10 min</span>
        <span>computed</span>
        <span>found</span>
      </p>
      <svg className="check-tape" viewBox="0 0 18 100" preserveAspectRatio="none" aria-hidden="true">
        <rect x="0" y="0" width="18" height="100" className="tape-blank" />
        <rect x="0" y="0" width="18" height={inked} className="tape-inked" />
        {Array.from({ length: 33 }, (_, i) => i * 3.125).map((y, i) => (
          <path
            key={y}
            d={`M${i % 4 === 0 ? 6 : 13} ${y}H18`}
            className={y < inked ? 'tape-mark on-ink' : 'tape-mark'}
            vectorEffect="non-scaling-stroke"
          />
        ))}
        <path d={`M0 ${inked}H18`} className="tape-now" vectorEffect="non-scaling-stroke" />
      </svg>
      <ol ref={list}>
        {steps.map(({ name, words }, i) => (
          <li key={name}>
            <button
              type="button"
              aria-current={name === current ? 'step' : undefined}
              data-done={answers[name] !== undefined}
              onClick={() => onPick(name)}
            >
              <span className="no num">{i + 1}</span>
              <b>{words}</b>
              <span className="c">
                {awaited && name !== 'sign' ? 'computing' : computedWords(name, study, radio, units)}
              </span>
              <span className={answers[name] && answers[name] !== NOT_REACHED ? 'm measured' : 'm'}>
                {answers[name] ?? '–'}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </div>
  );
}

interface Props {
  readonly study: Study | null;
  readonly radio: string | null;
  readonly units: UnitSystem;
  readonly current: StepName;
  readonly answers: Answers;
  onPick(name: StepName): void;
}
