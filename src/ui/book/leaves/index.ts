import type { ComponentType } from 'react';
import type { LeafName } from '../leaves.ts';
import { ConflictsLeaf } from './ConflictsLeaf.tsx';
import { ExportLeaf } from './ExportLeaf.tsx';
import { FleetLeaf } from './FleetLeaf.tsx';
import { HistoryLeaf } from './HistoryLeaf.tsx';
import { ImportLeaf } from './ImportLeaf.tsx';
import { KeepingLeaf } from './KeepingLeaf.tsx';
import { KitLeaf } from './KitLeaf.tsx';
import type { LeafProps } from './leaf-props.ts';
import { PhotosLeaf } from './PhotosLeaf.tsx';
import { RulesLeaf } from './RulesLeaf.tsx';
import { CardLeaf, EventsLeaf, MarkersLeaf, ResponseLeaf, StationsLeaf } from './SimpleLeaves.tsx';

/** What stands on each leaf. */
export const leafOf: Readonly<Record<LeafName, ComponentType<LeafProps>>> = {
  kit: KitLeaf,
  fleet: FleetLeaf,
  stations: StationsLeaf,
  response: ResponseLeaf,
  rules: RulesLeaf,
  card: CardLeaf,
  markers: MarkersLeaf,
  events: EventsLeaf,
  photos: PhotosLeaf,
  conflicts: ConflictsLeaf,
  history: HistoryLeaf,
  import: ImportLeaf,
  export: ExportLeaf,
  keeping: KeepingLeaf,
};
