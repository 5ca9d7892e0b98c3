import { ownName } from '../../io/offline/index.ts';

/** A district of a person's own whose files lie on this device: what opens it again without the desk. */
export interface OwnDistrict {
  /** Id of the kept set of files. */
  readonly keptId: string;
  /** Rasters behind web addresses that were opened with it. */
  readonly addresses: readonly string[];
  /** What it is called where its book has no name for it. */
  readonly name: string;
  /** Name of the browser's book of it. */
  readonly book: string;
}

const NOTE = 'brinkbook/own-district';

/** The own district that was opened last from kept files: it opens by itself on the desk and in the call view. Null where that is the demo. */
export function ownDistrict(notes: Pick<Storage, 'getItem'>): OwnDistrict | null {
  try {
    const found = JSON.parse(notes.getItem(ownName(NOTE)) ?? 'null') as OwnDistrict | null;
    return typeof found?.keptId === 'string' && Array.isArray(found.addresses) ? found : null;
  } catch {
    return null;
  }
}

/** Notes which district opens by itself from now on; null for the demo. */
export function noteOwnDistrict(notes: Pick<Storage, 'setItem' | 'removeItem'>, own: OwnDistrict | null): void {
  if (own) notes.setItem(ownName(NOTE), JSON.stringify(own));
  else notes.removeItem(ownName(NOTE));
}
