/** @jsxImportSource preact */

import { mileText } from '../../../road/index.ts';
import { CAUTION } from '../../../study/index.ts';
import { formatLength, type UnitSystem } from '../../../units/index.ts';
import type { Hit } from '../search/index.ts';
import { Ring } from './Ring.tsx';
import { siteWords } from './site-words.ts';
import { useCall, useCallState } from './use-call.ts';

/** The one box at the thumb, its results above it, the likeliest nearest to the thumb's way. */
export function Search() {
  const call = useCall();
  const { query, hits, pack, locating, place } = useCallState();
  const typing = query.trim() !== '';
  return (
    <search class="bottom">
      {typing && (
        <ul class="hits" aria-label="What this may mean">
          {hits.map((hit) => (
            <li key={keyOf(hit)}>
              <HitRow hit={hit} units={pack?.units ?? 'us'} />
            </li>
          ))}
          {hits.length === 0 && (
            <li class="none">
              {pack
                ? 'Nothing in the book fits. Try a road with its mile, part of a site’s name, or a position.'
                : 'No district is on this device yet: connect to a network once.'}
            </li>
          )}
        </ul>
      )}
      {!typing && <p class="caution">{CAUTION}</p>}
      <form
        class="box"
        onSubmit={(event) => {
          event.preventDefault();
          const first = hits.find(({ kind }) => kind !== 'said');
          if (first && !(first.kind === 'position' && first.reading.question)) call.take(first);
        }}
      >
        {place.kind !== 'start' && (
          <button type="button" class="home" aria-label="All sites" onClick={() => call.open({ kind: 'start' })}>
            <svg width="26" height="26" viewBox="0 0 26 26" aria-hidden="true">
              <path d="M16 5l-9 8 9 8" />
            </svg>
          </button>
        )}
        <input
          type="text"
          inputMode="search"
          enterKeyHint="go"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          aria-label="Road and mile, site or position"
          placeholder="mile, site, position"
          value={query}
          onInput={(event) => void call.type(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Escape') void call.type('');
          }}
        />
        {typing ? (
          <button type="button" class="here" aria-label="Clear" onClick={() => void call.type('')}>
            <svg width="26" height="26" viewBox="0 0 26 26" aria-hidden="true">
              <path d="M6 6l14 14M20 6L6 20" />
            </svg>
          </button>
        ) : (
          <button
            type="button"
            class="here"
            aria-label="Roads around this device"
            disabled={locating}
            onClick={() => void call.locate()}
          >
            <svg width="28" height="28" viewBox="0 0 28 28" aria-hidden="true">
              <circle cx="14" cy="14" r="7.5" />
              <path d="M14 2v7M14 19v7M2 14h7M19 14h7" />
            </svg>
          </button>
        )}
      </form>
    </search>
  );
}

function HitRow({ hit, units }: { hit: Hit; units: UnitSystem }) {
  const call = useCall();
  if (hit.kind === 'said') return <p class="none">{hit.sentence}</p>;
  if (hit.kind === 'site') {
    return (
      <button type="button" onClick={() => call.take(hit)}>
        <Ring planAs={hit.site.planAs} undecided={hit.site.undecided} />
        <span>
          {hit.site.name}
          <small>{siteWords(hit.site)}</small>
        </span>
      </button>
    );
  }
  if (hit.kind === 'mile') {
    const { road, mile, note, withinM } = hit.place;
    return (
      <button type="button" onClick={() => call.take(hit)}>
        <Post />
        <span>
          {road.name}, mile {mileText(mile)}
          <small>{note ?? `within ${formatLength(withinM, units, 'up')} along the road`}</small>
        </span>
      </button>
    );
  }
  const { position, question, form } = hit.reading;
  const words = `${position.lat.toFixed(5)}, ${position.lon.toFixed(5)}`;
  if (!question) {
    return (
      <button type="button" onClick={() => call.take(hit)}>
        <Cross />
        <span>
          {words}
          <small>read as {form}</small>
        </span>
      </button>
    );
  }
  return (
    <div class="question">
      <p>{question.sentence}</p>
      {question.instead && (
        <button
          type="button"
          onClick={() => call.open({ kind: 'around', at: question.instead!, errorM: Math.max(5, hit.reading.withinM) })}
        >
          Yes: {question.instead.lat.toFixed(5)}, {question.instead.lon.toFixed(5)}
        </button>
      )}
      <button type="button" onClick={() => call.take(hit)}>
        Take it as written: {words}
      </button>
    </div>
  );
}

const keyOf = (hit: Hit): string => {
  if (hit.kind === 'site') return hit.site.id;
  if (hit.kind === 'said') return hit.sentence;
  if (hit.kind === 'mile') return `${hit.place.road.name} ${hit.place.stationM}`;
  return `${hit.reading.position.lat} ${hit.reading.position.lon}`;
};

const Post = () => (
  <svg class="sign" width="30" height="30" viewBox="0 0 26 30" aria-hidden="true">
    <path d="M13 20v8M7 28h12M5 2h16v18H5zM10 8.5h6M10 13.5h6" />
  </svg>
);

const Cross = () => (
  <svg class="sign" width="30" height="30" viewBox="0 0 28 28" aria-hidden="true">
    <path d="M14 3v22M3 14h22" />
    <circle cx="14" cy="14" r="6" />
  </svg>
);
