/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import type { CallSite } from '../../../io/offline/index.ts';
import { CAUTION } from '../../../study/index.ts';
import type { WithoutStudy } from '../plan/without-study.ts';
import { Calls } from './Calls.tsx';
import { useCall, useCallState } from './use-call.ts';

/** How far a surveyed position may lie off its own road edge, metres: the roads around it are asked for with this. */
const AROUND_M = 10;

/** What is known of a site that could not be worked out: where it is, how to come to it, whom to call. */
export function Unworked({ site }: { site: CallSite }) {
  const call = useCall();
  const units = useCallState().pack?.units ?? 'us';
  const [found, setFound] = useState<(WithoutStudy & { readonly of: string }) | null>(null);
  useEffect(() => {
    let current = true;
    const look = async (): Promise<void> => {
      const [book, { withoutStudy }] = await Promise.all([
        call.book().catch(() => null),
        import('../plan/without-study.ts'),
      ]);
      if (current) setFound({ of: site.id, ...withoutStudy(book, site, units) });
    };
    void look();
    return () => {
      current = false;
    };
  }, [call, site, units]);
  const known = found?.of === site.id ? found : null;
  return (
    <section class="whole unworked" data-testid="unworked">
      <p class="stop-line">Nothing is known of the slope here: it counts as high until somebody has looked.</p>
      {known?.stops.map((text) => (
        <p key={text} class="alarm">
          {text}
        </p>
      ))}
      <h2>Where it is</h2>
      {known && (
        <p>
          <a class="plain" href={known.geo}>
            <span class="num">{known.position.join(' · ')}</span>
          </a>
        </p>
      )}
      {known && (known.radio || known.notes) && (
        <p>{[known.radio ? `Radio ${known.radio}.` : '', known.notes].filter((part) => part !== '').join(' ')}</p>
      )}
      <button
        type="button"
        class="plain"
        onClick={() => call.open({ kind: 'around', at: { lon: site.lon, lat: site.lat }, errorM: AROUND_M })}
      >
        Roads above and below it
      </button>
      {known && known.places.length > 0 && (
        <ul>
          {known.places.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      <h2>Whom to call</h2>
      {known && <Calls calls={known.calls} />}
      <h2>Cautions</h2>
      <p>{CAUTION}</p>
      <p>{known?.checkedOn ? `Checked in the field ${known.checkedOn}.` : 'Not field-verified.'}</p>
    </section>
  );
}
