/** @jsxImportSource preact */
import { useEffect } from 'preact/hooks';
import { Around } from './Around.tsx';
import { Notices } from './Notices.tsx';
import { Search } from './Search.tsx';
import { SitePlan } from './SitePlan.tsx';
import { Start } from './Start.tsx';
import { useCallState } from './use-call.ts';

/** The page: top reads, bottom touches. */
export function App() {
  const { place, light, query } = useCallState();
  useEffect(() => {
    document.documentElement.dataset.light = light;
    document
      .querySelector('meta[name="theme-color"]')
      ?.setAttribute('content', light === 'night' ? '#14181b' : '#f7f3e9');
  }, [light]);
  const typing = query.trim() !== '';
  return (
    <>
      <main class={typing ? 'behind' : ''} inert={typing}>
        {place.kind === 'start' && <Start />}
        {place.kind === 'around' && <Around />}
        {(place.kind === 'site' || place.kind === 'spot') && <SitePlan />}
        <Notices />
      </main>
      <Search />
    </>
  );
}
