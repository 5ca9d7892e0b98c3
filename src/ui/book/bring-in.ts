import type { Change } from '../../book/merge/index.ts';
import { changesOf, type Preview, type PreviewItem, siteFrom } from '../../io/index.ts';

/** Where an item without a side drops: asked of the ground, with the road that lies there. */
export type AskSide = (
  item: PreviewItem,
) => Promise<{ readonly sideAzimuthDeg: number; readonly roadName: string | null }>;

/** Items that may be ticked at once: nothing has to be asked of a person first. */
export const plainItem = ({ question, exists }: PreviewItem): boolean => question === null && !exists;

/**
 * The changes that add the chosen items of a preview, and the items that could not be made, each with why. Sites without a side are
 * given the one that `ask` finds.
 */
export async function changesOfItems(
  items: readonly PreviewItem[],
  file: string,
  ask: AskSide,
): Promise<{ readonly changes: Change[]; readonly left: { readonly where: string; readonly why: string }[] }> {
  const changes: Change[] = [];
  const left: { where: string; why: string }[] = [];
  for (const item of items) {
    try {
      const id = `site-${crypto.randomUUID().slice(0, 18)}`;
      const ready = item.ready ?? siteFrom(item, await ask(item), id, file);
      changes.push(...changesOf(ready.table, [ready.record]));
    } catch (error) {
      left.push({ where: item.where, why: error instanceof Error ? error.message : String(error) });
    }
  }
  return { changes, left };
}

/** What a preview holds, in words: "3 places, 1 of them already in the book". */
export function previewWords({ items, skipped }: Preview): string {
  const known = items.filter(({ exists }) => exists).length;
  const asks = items.filter(({ question }) => question !== null).length;
  return [
    `${items.length} ${items.length === 1 ? 'place' : 'places'}`,
    known > 0 && `${known} already in the book: adding changes them`,
    asks > 0 && `${asks} to be looked at first`,
    skipped.length > 0 && `${skipped.length} not usable`,
  ]
    .filter(Boolean)
    .join(', ');
}
