/** @jsxImportSource preact */
import { appFolder, type CallSite } from '../../../io/offline/index.ts';
import { READABLE_BY_ANYONE } from '../../../io/publish/index.ts';
import { mileText } from '../../../road/index.ts';
import { compassWord, thousands } from '../../../units/index.ts';
import { dayWords } from './day-words.ts';
import { KeptLine } from './KeptLine.tsx';
import { NewerDistrict } from './Notices.tsx';
import { Ring } from './Ring.tsx';
import { useCall, useCallState } from './use-call.ts';

/** Above this many sites the list gives way to the search box: nobody scrolls through a district. */
const LISTED = 60;

/** Before a place is chosen: what the device holds, and its sites in the order of the roads. */
export function Start() {
  const call = useCall();
  const { pack, loading, light } = useCallState();
  return (
    <section class="start">
      <header>
        <h1>{pack?.district ?? 'Brinkbook call'}</h1>
        <button
          type="button"
          class="light"
          aria-label={light === 'night' ? 'Day colours' : 'Night colours'}
          onClick={() => call.setLight(light === 'night' ? 'day' : 'night')}
        >
          {light === 'night' ? 'Day' : 'Night'}
        </button>
      </header>
      {pack?.invented && <p class="where">An invented district, for trying out.</p>}
      <KeptLine />
      <NewerDistrict />
      {pack?.publishedAtMs !== undefined && (
        <p class="where">
          Published {dayWords(pack.publishedAtMs)}. {READABLE_BY_ANYONE}
        </p>
      )}
      {!loading && !pack && (
        <p class="lead">
          Nothing is kept on this device yet. Connect to a network once and wait for the sites; from then on this page
          works without one.
        </p>
      )}
      {pack && <SiteList sites={pack.sites} />}
      <p class="where">
        {pack?.publishedAtMs === undefined ? (
          <>
            <a href={appFolder().href}>Survey and study</a>
            <a href={`${appFolder().href}#/open`}>Another district, or the demo</a>
          </>
        ) : (
          <a href={new URL('index.html', appFolder()).href}>All plan sheets</a>
        )}
      </p>
    </section>
  );
}

function SiteList({ sites }: { sites: readonly CallSite[] }) {
  const call = useCall();
  if (sites.length > LISTED) {
    return <p class="lead">{thousands(sites.length)} sites. Type a road and mile, a name or a position.</p>;
  }
  const roads = [...new Set(sites.map(({ road }) => road))];
  return roads.map((road) => (
    <section key={road} class="road">
      <h2>{road ?? 'Road without a name'}</h2>
      <ul>
        {sites
          .filter((site) => site.road === road)
          .map((site) => (
            <li key={site.id}>
              <button type="button" class="site" onClick={() => call.open({ kind: 'site', id: site.id })}>
                <Ring planAs={site.planAs} undecided={site.undecided} />
                <span>{site.name}</span>
                <span class="num">
                  {site.mile === null ? '' : `mile ${mileText(site.mile)}, `}
                  {compassWord(site.sideAzimuthDeg)}
                </span>
              </button>
            </li>
          ))}
      </ul>
    </section>
  ));
}
