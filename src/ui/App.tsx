import { lazy, Suspense, useEffect, useMemo, useState } from 'react';
import { deskCommands, useKeys } from './commands/index.ts';
import { Drawer } from './Drawer.tsx';
import { useActions } from './desk-context.ts';
import { ForeEdge } from './ForeEdge.tsx';
import { Head } from './notes/Head.tsx';
import { NotesFoot } from './notes/NotesFoot.tsx';
import { NotesBody, NotesTop } from './notes/NotesPage.tsx';
import { MapPane } from './sketch/MapPane.tsx';
import { ProfilePane } from './sketch/ProfilePane.tsx';
import { usePlace, useReading } from './state/index.ts';
import { SiteKeys } from './survey/index.ts';
import { useLight } from './use-light.ts';

const BookScreen = lazy(async () => ({ default: (await import('./book/index.ts')).BookScreen }));
const CheckScreen = lazy(async () => ({ default: (await import('./roadside/index.ts')).CheckScreen }));

/** The spread: notes on the left page, the sketch on the right, the screens on the fore-edge. */
export function App() {
  const { desk } = useActions();
  const light = useLight(useReading((state) => state.light));
  const screen = usePlace((state) => state.screen);
  const commands = useMemo(() => deskCommands(desk), [desk]);
  useKeys(commands);
  const onMap = screen !== 'book' && screen !== 'check';
  // The map is kept once it was there; a visit of the book alone does not start it.
  const [mapWanted, setMapWanted] = useState(onMap);
  useEffect(() => setMapWanted((wanted) => wanted || onMap), [onMap]);
  return (
    <main className="spread" data-screen={screen}>
      {onMap && (
        <Drawer foot={<NotesFoot />}>
          <Head light={light} />
          <NotesTop />
          {screen === 'survey' && <SiteKeys />}
          {screen === 'study' && <ProfilePane light={light} />}
          <NotesBody commands={commands} />
        </Drawer>
      )}
      <Suspense fallback={<p role="status">Turning the leaf.</p>}>
        {screen === 'book' && <BookScreen light={light} />}
        {screen === 'check' && <CheckScreen light={light} />}
      </Suspense>
      {mapWanted && <MapPane light={light} />}
      <ForeEdge />
    </main>
  );
}
