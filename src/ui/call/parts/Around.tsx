/** @jsxImportSource preact */
import { mileText } from '../../../road/index.ts';
import { compassWord, formatLength, type UnitSystem } from '../../../units/index.ts';
import type { RoadWithSites } from '../../../workers/call/index.ts';
import { distanceWords } from '../../distance-words.ts';
import { Ring } from './Ring.tsx';
import { useCall, useCallState } from './use-call.ts';

/** A surveyed site this near along the road is the place of the call, metres; farther, it is another place (judgement). */
const SAME_PLACE_M = 60;
/** How far roads are looked for where the ground is there, metres, without the error. */
const FULL_REACH_M = 300;
/** Nearer than this a site is here, metres: positions are not better. */
const HERE_M = 10;
/** Beyond this along the road the nearest surveyed site is told to be far, metres (judgement). */
const FAR_M = 150;

/** The roads around a position: every edge above with its drop and side, every road below as access, the error told. */
export function Around() {
  const { place, around, working, problem, pack } = useCallState();
  if (place.kind !== 'around') return null;
  const units = pack?.units ?? 'us';
  const { lat, lon } = place.at;
  return (
    <article class="around" aria-busy={working}>
      <header class="who">
        <h1>Position on the call</h1>
      </header>
      <p class="where num">
        {lat.toFixed(5)}, {lon.toFixed(5)}; within {formatLength(place.errorM, units, 'up')}
      </p>
      {problem && (
        <p class="alarm" role="alert">
          {problem}
        </p>
      )}
      {!around && working && <p class="lead">Reading the ground around it …</p>}
      {around && <Found units={units} />}
    </article>
  );
}

function Found({ units }: { units: UnitSystem }) {
  const { around, pack } = useCallState();
  const { above, below, beside, where, heightM, errorM, reachM } = around!;
  const start = [...beside, ...above];
  const nearest = Math.min(...start.map(({ sites }) => sites[0]?.alongM ?? Infinity));
  const nearestName = (): string => {
    const road = start.find(({ sites }) => sites[0]?.alongM === nearest);
    return pack?.sites.find(({ id }) => id === road?.sites[0]?.siteId)?.name ?? '';
  };
  if (heightM === null) {
    return (
      <p class="lead">No elevation on this device covers this position: no edge can be told. Find the site by name.</p>
    );
  }
  if (start.length === 0 && below.length === 0) {
    return <p class="lead">No road within {formatLength(reachM, units)} of this position, above or below.</p>;
  }
  return (
    <>
      <p class="lead">{where === 'slope' ? `On the slope, off every road. ${aboveWords(above)}` : 'Beside a road.'}</p>
      {start.length > 0 && Number.isFinite(nearest) && nearest > FAR_M && (
        <p class="alarm">
          No surveyed site here: the nearest, {nearestName()}, is {distanceWords(nearest, units)} along the road. Work
          out the edge itself.
        </p>
      )}
      <p class="data">Bare ground only: what grows or stands there is not seen.</p>
      {reachM < FULL_REACH_M + errorM && (
        <p class="alarm">
          Looked only {formatLength(reachM, units, 'down')} around: the elevation farther off is not on this device.
        </p>
      )}
      <ol class="edges">
        {start.map((road) => (
          <Edge key={`${road.way} ${road.stationM}`} road={road} units={units} />
        ))}
      </ol>
      {below.length > 0 && <h2>Access from below</h2>}
      <ul class="edges">
        {below.map((road) => (
          <li key={`${road.way} ${road.stationM}`} class="access">
            <Arrow down />
            <span>
              {roadWords(road)}
              <small>
                {formatLength(-road.dropM[1], units)} to {formatLength(-road.dropM[0], units)} lower,{' '}
                {formatLength(road.distanceM, units)} away in plan
              </small>
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

function Edge({ road, units }: { road: RoadWithSites; units: UnitSystem }) {
  const call = useCall();
  const { pack } = useCallState();
  const [least, most] = road.dropM;
  const near = road.sites.filter(({ alongM }) => alongM <= SAME_PLACE_M);
  const facts = [
    most < 2 && least > -2 ? 'at the height of the road' : `drop ${rangeWords(least, most, units)}`,
    `${formatLength(road.distanceM, units)} off the edge`,
    ...(road.traced ? ['straight up the slope'] : []),
    ...(road.drops ? [] : ['no drop edge found there']),
    ...(road.riseBetween ? ['the ground rises between'] : []),
  ];
  const side = `${compassWord(road.sideAzimuthDeg)} side`;
  const nameOf = (siteId: string): string => pack?.sites.find(({ id }) => id === siteId)?.name ?? siteId;
  return (
    <li>
      <div class="edge">
        <Arrow down={false} />
        <span>
          {roadWords(road)}, {side}
          <small>
            {facts.join(', ')}
            {near.length === 0 && road.sites[0] && (
              <>
                <br />
                {nameOf(road.sites[0].siteId)} {distanceWords(road.sites[0].alongM, units)}{' '}
                {compassWord(road.sites[0].towardDeg)} by road
              </>
            )}
          </small>
        </span>
        <button
          type="button"
          class="plain"
          onClick={() =>
            call.open({
              kind: 'spot',
              at: road.position,
              sideAzimuthDeg: road.sideAzimuthDeg,
              words: `${roadWords(road)}, ${side}`,
            })
          }
        >
          Work out
        </button>
      </div>
      {near.map(({ siteId, alongM }) => {
        const site = pack?.sites.find(({ id }) => id === siteId);
        if (!site) return null;
        return (
          <button key={siteId} type="button" class="site" onClick={() => call.open({ kind: 'site', id: siteId })}>
            <Ring planAs={site.planAs} undecided={site.undecided} />
            <span>
              {site.name}, {compassWord(site.sideAzimuthDeg)} side
            </span>
            <span class="num">{alongM < HERE_M ? 'here' : formatLength(alongM, units)}</span>
          </button>
        );
      })}
    </li>
  );
}

function aboveWords(above: readonly RoadWithSites[]): string {
  if (above.length === 0) return 'No road above.';
  const traced = above[0]!.traced ? '; the first is straight up the slope' : '; none is met straight up the slope';
  return `${above.length === 1 ? 'One road edge' : `${above.length} road edges`} above${traced}:`;
}

const roadWords = ({ roadName, mile }: RoadWithSites): string =>
  `${roadName ?? 'Road without a name'}${mile === null ? '' : `, mile ${mileText(mile)}`}`;

/** A range of drops, rounded outward; one figure where they are the same. */
function rangeWords(least: number, most: number, units: UnitSystem): string {
  const low = formatLength(Math.max(0, least), units, 'down');
  const high = formatLength(most, units, 'up');
  return low === high ? high : `${low.replace(/ .*/, '')} to ${high}`;
}

const Arrow = ({ down }: { down: boolean }) => (
  <svg class="arrow" width="22" height="22" viewBox="0 0 26 26" aria-hidden="true">
    <path d={down ? 'M13 4v17M6 14l7 8 7-8' : 'M13 22V5M6 12l7-8 7 8'} />
  </svg>
);
