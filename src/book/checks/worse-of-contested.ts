import type { Book, Contested, TableName } from '../schema/index.ts';

/** Which of two values makes a rescue harder, by table and field; a place, a name or a rule has no worse one. */
const worseOf: Readonly<Partial<Record<TableName, Readonly<Record<string, 'more' | 'less'>>>>> = {
  fleet: {
    lengthM: 'more',
    widthM: 'more',
    turningRadiusM: 'more',
    emptyMassKg: 'less',
    crew: 'less',
    deleted: 'more',
  },
  kits: { deleted: 'more' },
  ropes: { lengthM: 'less', ratedKn: 'less', count: 'less', deleted: 'more' },
  kitItems: { lengthM: 'less', ratedKn: 'less', count: 'less', deleted: 'more' },
  arrivals: { atMin: 'more', people: 'less', deleted: 'more' },
  sites: { patients: 'more', deleted: 'less' },
  events: { on: 'more', deleted: 'less' },
  measurements: { deleted: 'less' },
  corrections: { deleted: 'more' },
  signOffs: { on: 'less', deleted: 'more' },
};

/** True where `worseOfContested` knows the worse of a field's values; of a reading every value counts, hence the worse. */
export const hasWorse = ({ table, field }: Pick<Contested, 'table' | 'field'>): boolean =>
  worseOf[table]?.[field] !== undefined || (table === 'measurements' && field === 'reading');

/**
 * The book with the worse value in every field that nobody has decided between: a study goes by it until somebody does. The same book
 * where nothing is contested; the list of what is contested stays. Nothing said (null) is worse than any figure.
 */
export function worseOfContested(book: Book): Book {
  const open = book.contested.filter(({ table, field }) => worseOf[table]?.[field] !== undefined);
  if (open.length === 0) return book;
  const tables: Record<string, readonly { readonly id: string }[]> = { ...book.tables };
  for (const { table, id, field, values } of open) {
    const value = worst(
      values.map((one) => one.value),
      worseOf[table]![field]!,
    );
    tables[table] = tables[table]!.map((record) => (record.id === id ? { ...record, [field]: value } : record));
  }
  return { ...book, tables: tables as unknown as Book['tables'] };
}

type Scalar = string | number | boolean | null;

function worst(values: readonly unknown[], which: 'more' | 'less'): unknown {
  if (values.includes(null)) return null;
  const more = (a: Scalar, b: Scalar): boolean => a! > b!;
  return (values as readonly Scalar[]).reduce((a, b) => (more(b, a) === (which === 'more') ? b : a));
}
