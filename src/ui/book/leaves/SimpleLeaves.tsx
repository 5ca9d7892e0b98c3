import { live } from '../../../book/index.ts';
import { Shipped } from '../Shipped.tsx';
import { TableLedger } from '../TableLedger.tsx';
import type { LeafProps } from './leaf-props.ts';

/** Stations, and who comes to which roads after how many minutes. */
export function StationsLeaf({ book }: LeafProps) {
  const arrivals = live(book, 'arrivals');
  return (
    <div className="leaf-columns aside">
      <section>
        <h3>Stations</h3>
        <TableLedger table="stations" records={live(book, 'stations')} what="a station" />
      </section>
      <section>
        <h3>Arrivals, minutes after the first unit there</h3>
        <Shipped part="arrivals" words="No arrivals are written down yet." />
        <TableLedger
          table="responseAreas"
          records={live(book, 'responseAreas')}
          what="an area"
          under={({ id }) => (
            <TableLedger
              table="arrivals"
              records={arrivals.filter(({ areaId }) => areaId === id).sort((a, b) => a.atMin - b.atMin)}
              what="a unit"
              given={{ areaId: id }}
            />
          )}
        />
      </section>
    </div>
  );
}

/** Whom to call when: every condition of a line must hold. */
export function ResponseLeaf({ book }: LeafProps) {
  return (
    <>
      <p className="note">A line is called where all its conditions hold; those left “either way” are not asked.</p>
      <Shipped part="response" words="No response table is written down yet." />
      <TableLedger
        table="responseRows"
        records={live(book, 'responseRows').sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1))}
        what="a line"
      />
    </>
  );
}

/** Roads with mile markers, and where the markers stand. */
export function MarkersLeaf({ book }: LeafProps) {
  const markers = live(book, 'mileMarkers');
  return (
    <>
      <p className="note">Between two markers the mile is measured along the road; give at least two on each road.</p>
      <TableLedger
        table="routes"
        records={live(book, 'routes')}
        what="a road"
        under={({ id }) => (
          <TableLedger
            table="mileMarkers"
            records={markers.filter(({ routeId }) => routeId === id).sort((a, b) => a.post.mile - b.post.mile)}
            what="a marker"
            given={{ routeId: id }}
          />
        )}
      />
    </>
  );
}

/** What changed the ground or a road, where and when. */
export function EventsLeaf({ book }: LeafProps) {
  return (
    <>
      <p className="note">
        Every site in the area is “changed since survey” until somebody was there after that day, and older elevation is
        for screening only.
      </p>
      <TableLedger table="events" records={live(book, 'events')} what="an event" />
    </>
  );
}

/** The check card's lines. */
export function CardLeaf({ book }: LeafProps) {
  return (
    <>
      <p className="note">The card on the back of a plan sheet: the lines are the department’s own, two boxes each.</p>
      <TableLedger
        table="cardLines"
        records={live(book, 'cardLines').sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1))}
        what="a line"
      />
    </>
  );
}
