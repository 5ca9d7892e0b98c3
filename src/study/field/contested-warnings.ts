import { type Contested, hasWorse, type QuantityName, quantities, type TableName } from '../../book/index.ts';
import type { StudyWarning } from '../study.ts';

/** So many undecided fields are told one by one. */
const TOLD = 3;

/** Fields that two people wrote differently and nobody has decided between: the worse value is used where one is the worse. */
export function contestedWarnings(contested: readonly Contested[]): StudyWarning[] {
  const told = contested.slice(0, TOLD).map(contestedWords);
  const more = contested.length - told.length;
  if (more > 0)
    told.push(
      `In ${more} further field${more === 1 ? '' : 's'} two values stand in the book: decide on the book screen.`,
    );
  return told.map((text) => ({ code: 'contested', severity: 'check', text }));
}

function contestedWords(one: Contested): string {
  const { field, table, values } = one;
  const count = values.length === 2 ? 'Two' : String(values.length);
  const names = [...new Set(values.map(({ who }) => who))].join(' and ');
  const what = table === 'measurements' && field === 'reading' ? readingWords(values) : `${plain(field)} of ${of(one)}`;
  const used = hasWorse(one)
    ? 'the worse is used'
    : 'neither is worse in itself, the one that the book holds first is used';
  return `${count} values stand in the book for ${what}, by ${names}; ${used} until somebody decides.`;
}

/** "a reading (angle of the slope over 5 m 36 or 47)", in the unit of the book. */
function readingWords(values: Contested['values']): string {
  const read = values.map(({ value }) => value as { quantity?: QuantityName; value?: number } | null);
  const words = quantities[read[0]?.quantity as QuantityName]?.words ?? 'no quantity';
  return `a reading (${words}: ${read.map((one) => one?.value ?? 'none').join(' or ')}${unitOf(read[0]?.quantity)})`;
}

const unitOf = (quantity: QuantityName | undefined): string => (quantity?.endsWith('Deg') ? '°' : ' m');

/** "emptyMassKg" is read as "empty mass". */
const plain = (field: string): string =>
  field
    .replace(/(?:M|Mm|Kg|Kn|Deg|Min)$/u, '')
    .replace(/[A-Z]/gu, (letter) => ` ${letter.toLowerCase()}`)
    .trim();

const tableWords: Readonly<Partial<Record<TableName, string>>> = {
  settings: 'the district',
  sites: 'this site',
  fleet: 'apparatus',
  kits: 'kit',
  ropes: 'rope',
  kitItems: 'kit item',
  responseAreas: 'response area',
  arrivals: 'arrival',
  responseRows: 'response table row',
  angleRules: 'angle rule',
  rates: 'rate',
  events: 'event',
  sources: 'source',
  marks: 'mark',
  measurements: 'reading',
  corrections: 'correction',
  signOffs: 'sign-off',
  photos: 'photo',
  supportPlaces: 'support place',
  stations: 'station',
};

const of = ({ table, id }: Contested): string => {
  const words = tableWords[table] ?? table;
  return table === 'sites' || table === 'settings' ? words : `${words} ${id}`;
};
