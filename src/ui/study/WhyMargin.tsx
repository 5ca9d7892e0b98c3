import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { shownStudy, useSketch, useStudy } from '../state/index.ts';

/** The margin of the sketch: why the tapped number is what it is, with a thread down the gutter. Escape closes it. */
export function WhyMargin() {
  const why = useSketch((state) => state.why);
  const study = useStudy(shownStudy);
  const margin = useRef<HTMLElement>(null);
  const [thread, setThread] = useState('');
  const close = (): void => {
    const key = useSketch.getState().why?.key;
    useSketch.setState({ why: null });
    if (key) document.querySelector<HTMLElement>(`[data-why="${CSS.escape(key)}"]`)?.focus();
  };
  // The number may be another one once the study has changed: it is asked for again.
  useEffect(() => {
    if (study) useSketch.setState({ why: null });
  }, [study]);
  useLayoutEffect(() => {
    if (!why) return;
    const draw = (): void => setThread(threadOf(why.key, margin.current));
    draw();
    const scroller = document.querySelector('.notes-scroll');
    scroller?.addEventListener('scroll', draw, { passive: true });
    window.addEventListener('resize', draw);
    return () => {
      scroller?.removeEventListener('scroll', draw);
      window.removeEventListener('resize', draw);
    };
  }, [why]);
  if (!why) return null;
  return (
    <>
      <svg className="why-thread" aria-hidden="true">
        <path d={thread} />
      </svg>
      <section
        ref={margin}
        id="why"
        className="why"
        aria-label={`Why ${why.title}`}
        aria-live="polite"
        onKeyDown={(event) => event.key === 'Escape' && close()}
      >
        <div className="why-head">
          <i className="accent">why</i> <b>{why.title}</b>
          <button type="button" onClick={close}>
            close
          </button>
        </div>
        {why.formula?.split('\n').map((line) => (
          <p key={line} className="num">
            {line}
          </p>
        ))}
        {why.result && (
          <p className="num">
            <b>{why.result}</b>
          </p>
        )}
        {why.inputs.length > 0 && (
          <dl className="why-inputs num">
            {why.inputs.map(({ name, value }) => (
              <div key={name}>
                <dt>{spaced(name)}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        )}
        {why.rule && <p className="num">{why.rule}</p>}
        {why.notes.map((note) => (
          <p key={note} className="num">
            {note}
          </p>
        ))}
        <p className="note">
          {why.how && `${why.how}. `}
          {why.formula && 'Metres, degrees and kilonewtons. '}
          {why.source && `Source: ${why.source}.`}
        </p>
      </section>
    </>
  );
}

/** "haulFieldM" as words: "haul field m". */
const spaced = (name: string): string => name.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();

/** From the number along its line to the gutter, down to the margin. Empty where the number is out of sight. */
function threadOf(key: string, margin: HTMLElement | null): string {
  const from = document.querySelector(`[data-why="${CSS.escape(key)}"]`)?.getBoundingClientRect();
  const notes = document.querySelector('.notes')?.getBoundingClientRect();
  const to = margin?.getBoundingClientRect();
  if (!from || !notes || !to || to.left < notes.right - 2 || from.bottom < notes.top || from.bottom > notes.bottom)
    return '';
  const gutter = notes.right - 12;
  return `M${from.left} ${from.bottom + 1}H${gutter}V${to.top}H${to.right}`;
}
