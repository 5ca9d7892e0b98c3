import { type KitItem, kitsOf, live } from '../../../book/index.ts';
import { formatForce, formatLength, type UnitSystem } from '../../../units/index.ts';
import { useReading } from '../../state/index.ts';
import { RopeDrawing } from '../drawings/index.ts';
import { Shipped } from '../Shipped.tsx';
import { TableLedger } from '../TableLedger.tsx';
import type { LeafProps } from './leaf-props.ts';

/** Every kit: its ropes to one scale, then its hardware. */
export function KitLeaf({ book }: LeafProps) {
  const units = useReading((state) => state.units);
  const { value: kits, shipped } = kitsOf(book);
  const mostM = Math.max(0, ...kits.flatMap(({ ropes }) => ropes.map(({ lengthM }) => lengthM)));
  const ropes = live(book, 'ropes');
  const items = live(book, 'kitItems');
  return (
    <>
      <p className="note">
        Ropes are drawn to one scale. A rope whose rating nobody read is dashed and is not counted on.
      </p>
      <Shipped part="kit" words="No kit is written down yet." />
      {shipped && (
        <div className="leaf-columns">
          {kits.map(({ id, name, ropes: own, items: hardware }) => (
            <section key={id} className="assumed" aria-label={name}>
              <h3>{name}</h3>
              <RopeDrawing ropes={own} {...{ mostM, units }} />
              <ul className="kit-words">
                {hardware.map((item) => (
                  <li key={`${item.kind} ${item.lengthM} ${item.ratedKn}`}>{hardwareWords(item, units)}</li>
                ))}
              </ul>
            </section>
          ))}
        </div>
      )}
      <TableLedger
        table="kits"
        records={live(book, 'kits')}
        what="a kit"
        under={({ id, name }) => {
          const own = ropes.filter(({ kitId }) => kitId === id);
          return (
            <>
              <RopeDrawing ropes={own} {...{ mostM, units }} />
              <h3>Ropes of {name}</h3>
              <TableLedger table="ropes" records={own} what="a rope" given={{ kitId: id }} />
              <h3>Hardware of {name}</h3>
              <TableLedger
                table="kitItems"
                records={items.filter(({ kitId }) => kitId === id)}
                what="hardware"
                given={{ kitId: id }}
              />
            </>
          );
        }}
      />
    </>
  );
}

/** How many of what, how long, and what one of them is rated for. */
function hardwareWords({ kind, count, lengthM, ratedKn }: KitItem, units: UnitSystem): string {
  const size = lengthM === null ? '' : `, ${formatLength(lengthM, units, 'down')}`;
  return `${count} × ${kind}${size}, ${ratedKn === null ? 'not rated' : formatForce(ratedKn, units)}`;
}
