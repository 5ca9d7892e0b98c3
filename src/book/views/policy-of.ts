import { type AngleRule, angleRules, defaultAngleRule } from '../angle-rules.ts';
import { type Rates, ratesWith } from '../rates.ts';
import { type Book, live, rateInBounds, type SettingsRecord } from '../schema/index.ts';

/** The book's settings; null before anybody made any. */
export const settingsOf = (book: Book): SettingsRecord | null => live(book, 'settings')[0] ?? null;

/** What a book calls its district, for where the screen says by itself that it is made up; empty where it does not say. */
export function districtNameOf(book: Book): string {
  const settings = settingsOf(book);
  return (settings?.district ?? '').replace(/ \(invented\)$/, settings?.invented ? '' : '$&');
}

/** Where the book is published, ending in a slash; null where it is not. */
export function publishedAddressOf(book: Book): string | null {
  const address = settingsOf(book)?.publishedAddress ?? null;
  return address === null || address.endsWith('/') ? address : `${address}/`;
}

/** The rates with the district's own in their place; those out of bounds stay as shipped. */
export const ratesOf = (book: Book): Rates =>
  ratesWith(
    Object.fromEntries(
      live(book, 'rates')
        .filter(rateInBounds)
        .map(({ id, value }) => [id, value]),
    ),
  );

/** The angle rule that the book goes by; the shipped default where its own is gone. */
export function angleRuleOf(book: Book): AngleRule {
  const settings = settingsOf(book);
  const own = live(book, 'angleRules').find(({ id }) => id === settings?.angleRuleId);
  if (own) return { name: own.name, ...own.limits, source: own.source };
  return angleRules.find(({ name }) => name === settings?.angleRuleName) ?? defaultAngleRule;
}
