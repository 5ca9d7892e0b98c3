/** @jsxImportSource preact */
import type { CallSite } from '../../../io/offline/index.ts';
import { compassWord } from '../../../units/index.ts';
import { distanceWords } from '../../distance-words.ts';
import { Ring } from './Ring.tsx';
import { useCall, useCallState } from './use-call.ts';

/** The sites before and after this one along its road. */
export function Neighbours({ site }: { site: CallSite }) {
  const call = useCall();
  const { pack } = useCallState();
  if (!pack || site.stationM === null) return null;
  const own = pack.sites.filter(({ road, stationM }) => road === site.road && stationM !== null);
  const i = own.findIndex(({ id }) => id === site.id);
  const near = [own[i - 1], own[i + 1]].filter((one) => one !== undefined);
  if (near.length === 0) return null;
  return (
    <nav class="near" aria-label="Sites along the road">
      {near.map((other) => (
        <button key={other.id} type="button" onClick={() => call.open({ kind: 'site', id: other.id })}>
          <svg class="arrow" width="22" height="22" viewBox="0 0 26 26" aria-hidden="true">
            <path d={other === own[i - 1] ? 'M20 13H5M12 6l-7 7 7 7' : 'M6 13h15M14 6l7 7-7 7'} />
          </svg>
          <Ring planAs={other.planAs} undecided={other.undecided} />
          <span>
            {other.name}, {compassWord(other.sideAzimuthDeg)}
          </span>
          <span class="num">{distanceWords(Math.abs(other.stationM! - site.stationM!), pack.units)}</span>
        </button>
      ))}
    </nav>
  );
}
