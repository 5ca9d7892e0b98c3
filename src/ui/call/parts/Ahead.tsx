/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import type { LonLat } from '../../../geo/index.ts';
import type { ByRoad } from '../../../workers/call/index.ts';
import { distanceWords } from '../../distance-words.ts';
import { followPosition, mayLocate } from '../follow-position.ts';
import { useCall, useCallState } from './use-call.ts';

/**
 * How far the place is along the roads from this device, and whether it lies ahead; followed while the plan is open. Where the
 * device has not been allowed to say where it is, a key asks for that; nothing asks by itself.
 */
export function Ahead({ to }: { to: LonLat }) {
  const call = useCall();
  const units = useCallState().pack?.units ?? 'us';
  const [asked, setAsked] = useState(false);
  const [may, setMay] = useState<'yes' | 'ask' | 'no'>('no');
  const [found, setFound] = useState<ByRoad | null>(null);
  useEffect(() => {
    let current = true;
    void mayLocate().then((answer) => current && setMay(answer));
    return () => {
      current = false;
    };
  }, []);
  const { lon, lat } = to;
  useEffect(() => {
    if (may !== 'yes' && !asked) return;
    let current = true;
    const stop = followPosition(
      async (from) => {
        const byRoad = await call.byRoad(from, { lon, lat }).catch(() => null);
        if (current) setFound(byRoad);
      },
      () => current && setFound(null),
    );
    return () => {
      current = false;
      stop();
    };
  }, [call, may, asked, lon, lat]);
  if (found) return <span class="num ahead">{aheadWords(found, units)}</span>;
  if (may !== 'ask' || asked) return null;
  return (
    <button type="button" class="ahead" onClick={() => setAsked(true)}>
      how far?
    </button>
  );
}

/** "0.6 mi ahead"; the error of the position is told where it is more than a tenth of the way. */
function aheadWords({ alongM, ahead, errorM }: ByRoad, units: 'us' | 'metric'): string {
  if (alongM <= errorM) return 'here';
  const about = errorM > alongM / 10 ? 'about ' : '';
  const where = ahead === null ? 'by road' : ahead ? 'ahead' : 'behind';
  return `${about}${distanceWords(alongM, units)} ${where}`;
}
