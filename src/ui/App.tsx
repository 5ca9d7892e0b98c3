import { Drawer } from './Drawer.tsx';
import { useDesk } from './desk-state.ts';
import { ForeEdge } from './ForeEdge.tsx';
import { Head } from './notes/Head.tsx';
import { NotesBody, NotesTop } from './notes/NotesPage.tsx';
import { Caution } from './notes/Provenance.tsx';
import { MapPane } from './sketch/MapPane.tsx';
import { ProfilePane } from './sketch/ProfilePane.tsx';
import { useLight } from './use-light.ts';

/** The spread: notes on the left page, the sketch on the right, the screens on the fore-edge. */
export function App() {
  const light = useLight(useDesk((state) => state.light));
  return (
    <main className="spread">
      <Drawer foot={<Caution />}>
        <Head light={light} />
        <NotesTop />
        <ProfilePane />
        <NotesBody />
      </Drawer>
      <MapPane light={light} />
      <ForeEdge />
    </main>
  );
}
