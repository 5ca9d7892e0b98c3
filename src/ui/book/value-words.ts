import type { Book, TableName } from '../../book/index.ts';
import { everyTable, recordWords } from './use-whole-book.ts';

/** What tables are called by people, one record of them. */
export const tableWords: Readonly<Record<TableName, string>> = {
  settings: 'settings',
  sites: 'site',
  marks: 'mark',
  measurements: 'reading',
  corrections: 'reading taken over',
  signOffs: 'sign-off',
  photos: 'photo',
  events: 'event',
  fleet: 'apparatus',
  kits: 'kit',
  ropes: 'rope',
  kitItems: 'hardware',
  stations: 'station',
  responseAreas: 'area',
  arrivals: 'arrival',
  responseRows: 'response line',
  routes: 'road',
  mileMarkers: 'mile marker',
  angleRules: 'angle rule',
  rates: 'rate',
  drills: 'drill',
  cardLines: 'card line',
  supportPlaces: 'place',
  sources: 'source',
  crashes: 'crash',
};

/** "lengthM" as "length". */
export const fieldWords = (field: string): string =>
  field === 'deleted'
    ? 'whether it is deleted'
    : field.replace(/(Deg|Kg|Kn|Mm|M)$/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A value of any field, short. */
export function valueWords(field: string, value: unknown): string {
  if (field === 'deleted') return value === true ? 'delete it' : 'keep it';
  if (value === null || value === '') return 'nothing';
  if (typeof value === 'object') {
    if (Array.isArray(value)) return value.length === 0 ? 'none' : clip(value.map((one) => plain(one)).join(', '));
    return clip(plain(value));
  }
  return clip(`${value}${unitOf(field)}`);
}

/** A record by its id in words, deleted ones too. */
export function nameOf(book: Book, table: TableName, id: string): string {
  const records = book.tables[table] as readonly { id: string; on?: string }[];
  const record = records.find((one) => one.id === id);
  const kind = tableWords[table];
  // Nobody gave these a name: their ids say nothing to a person, their day does.
  if (record && (table === 'crashes' || table === 'drills')) return `${kind} of ${record.on}`;
  const words = record ? recordWords(table, record as never) : id;
  return words === kind ? kind : `${kind} ${words}`;
}

/** Every deleted record, newest table order kept. */
export const deletedOf = (book: Book): { readonly table: TableName; readonly id: string; readonly words: string }[] =>
  everyTable.flatMap((table) =>
    (book.tables[table] as readonly { id: string; deleted: boolean }[])
      .filter(({ deleted }) => deleted)
      .map(({ id }) => ({ table, id, words: nameOf(book, table, id) })),
  );

const unitOf = (field: string): string =>
  field.endsWith('Deg')
    ? '°'
    : field.endsWith('Kg')
      ? ' kg'
      : field.endsWith('Kn')
        ? ' kN'
        : field.endsWith('Mm')
          ? ' mm'
          : field.endsWith('M')
            ? ' m'
            : '';

function plain(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  return Object.entries(value)
    .filter(([, one]) => one !== null)
    .map(([key, one]) => `${fieldWords(key)} ${typeof one === 'object' ? plain(one) : one}`)
    .join(', ');
}

const clip = (text: string): string => (text.length > 160 ? `${text.slice(0, 160)}…` : text);
