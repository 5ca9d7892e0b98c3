import { useMemo } from 'react';
import { deskCommands, useKeys } from './commands/index.ts';
import { Drawer } from './Drawer.tsx';
import { useActions } from './desk-context.ts';
import { ForeEdge } from './ForeEdge.tsx';
import { Head } from './notes/Head.tsx';
import { NotesBody, NotesTop } from './notes/NotesPage.tsx';
import { Caution } from './notes/Provenance.tsx';
import { MapPane } from './sketch/MapPane.tsx';
import { ProfilePane } from './sketch/ProfilePane.tsx';
import { usePlace, useReading } from './state/index.ts';
import { useLight } from './use-light.ts';

/** The spread: notes on the left page, the sketch on the right, the screens on the fore-edge. */
export function App() {
  const { desk } = useActions();
  const light = useLight(useReading((state) => state.light));
  const screen = usePlace((state) => state.screen);
  const commands = useMemo(() => deskCommands(desk), [desk]);
  useKeys(commands);
  return (
    <main className="spread" data-screen={screen}>
      <Drawer foot={<Caution />}>
        <Head light={light} />
        <NotesTop />
        {screen === 'study' && <ProfilePane light={light} />}
        <NotesBody commands={commands} />
      </Drawer>
      <MapPane light={light} />
      <ForeEdge />
    </main>
  );
}
