import { defaultFleet, live } from '../../../book/index.ts';
import { ApparatusOutline } from '../drawings/index.ts';
import { isShipped } from '../make-own.ts';
import { Shipped } from '../Shipped.tsx';
import { TableLedger } from '../TableLedger.tsx';
import type { LeafProps } from './leaf-props.ts';

/** Every apparatus as an outline to one scale, with what a layout reads of it. */
export function FleetLeaf({ book }: LeafProps) {
  return (
    <>
      <p className="note">
        Outlines from above, to one scale; dots are attachment points, open where nobody stated a strength.
      </p>
      <Shipped part="fleet" words="No apparatus is written down yet." />
      {isShipped(book, 'fleet') && (
        <div className="outlines assumed">
          {defaultFleet.map((apparatus) => (
            <figure key={apparatus.id}>
              <ApparatusOutline apparatus={{ ...apparatus, attachments: [...apparatus.attachments] }} />
              <figcaption>{apparatus.name}</figcaption>
            </figure>
          ))}
        </div>
      )}
      <TableLedger
        table="fleet"
        records={live(book, 'fleet')}
        what="an apparatus"
        under={(apparatus) => <ApparatusOutline apparatus={apparatus} />}
      />
    </>
  );
}
