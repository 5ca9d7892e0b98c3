import {
  angleRuleOf,
  type Book,
  districtNameOf,
  emptyBook,
  live,
  settingsOf,
  type TableName,
} from '../../book/index.ts';
import type { OpenBook } from '../../io/store/index.ts';
import { useBook, useGiven, useReads } from '../state/index.ts';
import type { Deps } from './deps.ts';
import type { StudyActions } from './study-actions.ts';

/** Tables that say who comes, with what, how the district works, what changed the ground and what was read on it. */
const resourceTables: readonly TableName[] = [
  'settings',
  'fleet',
  'kits',
  'ropes',
  'kitItems',
  'responseAreas',
  'arrivals',
  'responseRows',
  'rates',
  'angleRules',
  'events',
  'measurements',
  'corrections',
  'signOffs',
];

/** Keeps the studies in step with the book's fleet, kit, arrivals, response table, rates, events, readings, sign-offs and angle rule. */
export function tellResources({ workers }: Pick<Deps, 'workers'>, study: StudyActions): void {
  let stop: (() => void) | null = null;
  const tell = (opened: OpenBook): void => {
    const book = opened.book();
    workers.study.call('resources', partOf(book)).then(
      () => {
        useReads.setState({ bySite: new Map() });
        study.again();
      },
      // No district is open yet: the book is told once more when one is.
      () => undefined,
    );
  };
  useBook.subscribe(({ opened }, before) => {
    if (opened === before.opened) return;
    stop?.();
    stop = null;
    if (!opened) return;
    goBy(opened.book());
    tell(opened);
    stop = opened.subscribe(({ keys }) => {
      if (keys.some(([table]) => table === 'settings' || table === 'angleRules')) goBy(opened.book());
      if (keys.some(([table]) => resourceTables.includes(table as TableName))) tell(opened);
    });
  });
}

/** The angle rule that the book goes by is the one in force, and what it says of its district stands at the head. */
function goBy(book: Book): void {
  const ownRules = live(book, 'angleRules').map(({ name, limits, source }) => ({ name, ...limits, source }));
  const { name } = angleRuleOf(book);
  const settings = settingsOf(book);
  const said = { districtName: districtNameOf(book), invented: settings?.invented ?? false };
  useGiven.setState({ ownRules, ruleName: name, ...said });
}

/** The book with nothing but those tables: sites and photos need not cross to the worker. */
function partOf({ tables, contested }: Book): Book {
  const book = emptyBook();
  const part = Object.fromEntries(resourceTables.map((table) => [table, tables[table]]));
  return { ...book, contested, tables: { ...book.tables, ...part } };
}
