import { apparatusKinds, eventKinds, kitItemKinds, responseTiers } from '../../../book/index.ts';
import type { Column } from './column.ts';

const name: Column = { field: 'name', label: 'Name', kind: 'line' };
const phone: Column = { field: 'phone', label: 'Telephone', kind: 'line', empty: true };
const radio: Column = { field: 'radio', label: 'Radio', kind: 'line', empty: true };
const notes: Column = { field: 'notes', label: 'Notes', kind: 'notes' };
const count: Column = { field: 'count', label: 'How many', kind: 'number' };
const rated: Column = { field: 'ratedKn', label: 'Rated for', kind: 'force', empty: true, hint: 'not read' };
const kits: Column = { field: 'kitIds', label: 'Kit', kind: 'some of', table: 'kits' };
const by: Column = { field: 'by', label: 'By', kind: 'line', empty: true };
const order: Column = { field: 'order', label: 'Place in the table', kind: 'number' };
const ifAny = (part: string, label: string): Column => ({ field: 'when', part, label, kind: 'flag', empty: true });

/** The columns of every ledger, table by table. */
export const columns = {
  kits: [name, notes],
  ropes: [
    { field: 'lengthM', label: 'Length', kind: 'length' },
    count,
    { field: 'diameterMm', label: 'Diameter, mm', kind: 'number', empty: true },
    rated,
    { field: 'label', label: 'Label', kind: 'line', empty: true },
    { field: 'inServiceSince', label: 'In service since', kind: 'day', empty: true },
  ],
  kitItems: [
    { field: 'kind', label: 'Kind', kind: 'choice', options: kitItemKinds },
    count,
    rated,
    { field: 'lengthM', label: 'Length', kind: 'length', empty: true },
    { field: 'label', label: 'Label', kind: 'line', empty: true },
  ],
  fleet: [
    name,
    { field: 'kind', label: 'Kind', kind: 'choice', options: apparatusKinds },
    { field: 'lengthM', label: 'Length', kind: 'length' },
    { field: 'widthM', label: 'Width', kind: 'length' },
    { field: 'wheelbaseM', label: 'Wheelbase', kind: 'length' },
    { field: 'turningRadiusM', label: 'Turning radius', kind: 'length' },
    { field: 'emptyMassKg', label: 'Empty', kind: 'mass' },
    { field: 'grossMassKg', label: 'As it drives', kind: 'mass' },
    {
      field: 'attachments',
      label: 'Attachment points',
      kind: 'ties',
      hint: 'front 9000, rear 9000; strength only where it is known',
    },
    { field: 'crew', label: 'Crew', kind: 'number' },
    kits,
  ],
  stations: [
    name,
    { field: 'at', label: 'Position', kind: 'place' },
    { field: 'turnoutMin', label: 'Minutes to roll', kind: 'number' },
    { field: 'mutualAid', label: 'Mutual aid', kind: 'flag' },
    { field: 'apparatusIds', label: 'Apparatus', kind: 'some of', table: 'fleet' },
    kits,
    phone,
    radio,
  ],
  responseAreas: [
    name,
    { field: 'roads', label: 'Roads it serves', kind: 'list', hint: 'names with commas; none for all other roads' },
  ],
  arrivals: [
    { field: 'unit', label: 'Unit', kind: 'line' },
    { field: 'atMin', label: 'Minutes after the first', kind: 'number' },
    { field: 'people', label: 'People', kind: 'number' },
    { field: 'tier', label: 'Comes with', kind: 'choice', options: responseTiers },
    { field: 'apparatusId', label: 'Stands with', kind: 'one of', table: 'fleet', empty: true },
    kits,
  ],
  responseRows: [
    { field: 'resource', label: 'Who', kind: 'line' },
    {
      field: 'when',
      part: 'planAs',
      label: 'Planned as',
      kind: 'choices',
      options: ['low', 'steep', 'high'],
      empty: true,
    },
    ifAny('ropeShort', 'Rope is short'),
    ifAny('peopleShort', 'People are short'),
    ifAny('water', 'Water below'),
    ifAny('laneClosed', 'A lane is closed'),
    { field: 'when', part: 'hazards', label: 'Any of these marks', kind: 'list', empty: true, hint: 'wire, pole' },
    { field: 'agency', label: 'Agency', kind: 'line', empty: true },
    phone,
    radio,
    { field: 'why', label: 'Why', kind: 'line' },
    order,
  ],
  angleRules: [
    name,
    { field: 'limits', part: 'lowMaxDeg', label: 'Low under, degrees', kind: 'number' },
    { field: 'limits', part: 'highMinDeg', label: 'High from, degrees', kind: 'number' },
    { field: 'source', label: 'Where it is written', kind: 'line' },
  ],
  routes: [
    name,
    { field: 'ref', label: 'Number', kind: 'line', empty: true },
    { field: 'rising', label: 'Markers rise', kind: 'line', empty: true, hint: 'eastbound' },
    notes,
  ],
  mileMarkers: [
    { field: 'post', part: 'mile', label: 'Mile', kind: 'number' },
    { field: 'post', part: 'at', label: 'Position', kind: 'place' },
    by,
    { field: 'on', label: 'Read on', kind: 'day', empty: true },
  ],
  events: [
    name,
    { field: 'kind', label: 'Kind', kind: 'choice', options: eventKinds },
    { field: 'on', label: 'On', kind: 'day' },
    { field: 'area', label: 'Area', kind: 'area', hint: 'corners, one position a line; or 44.01, -128.02 within 300' },
    by,
    notes,
  ],
  cardLines: [
    { field: 'heading', label: 'Heading', kind: 'line' },
    { field: 'text', label: 'Line', kind: 'line' },
    { ...order, label: 'Place on the card' },
  ],
} as const satisfies Record<string, readonly Column[]>;

export type LedgerTable = keyof typeof columns;
