import type { MarkRecord } from '../../book/index.ts';
import type { Change } from '../../book/merge/index.ts';
import { changesOf, markFrom, type Preview, type PreviewItem, siteFrom } from '../../io/index.ts';
import { UserError } from '../../units/index.ts';

/** What a person says that a place without a kind is. */
export type TakenAs = MarkRecord['kind'] | 'site';

/** Where an item without a side drops: asked of the ground, with the road that lies there. */
export type AskSide = (
  item: PreviewItem,
) => Promise<{ readonly sideAzimuthDeg: number; readonly roadName: string | null }>;

/** Items that may be ticked at once: nothing has to be asked of a person first. */
export const plainItem = ({ question, exists }: PreviewItem): boolean => question === null && !exists;

/** What a place is taken as before a person says otherwise; null where only a person can say. */
export const firstTakenAs = ({ wants }: PreviewItem): TakenAs | null => (wants === 'side' ? 'site' : null);

/**
 * The changes that add the chosen items of a preview, and the items that could not be made, each with why. Sites without a side are
 * given the one that `ask` finds; `taken` says what the others are.
 */
export async function changesOfItems(
  items: readonly PreviewItem[],
  file: string,
  ask: AskSide,
  taken: (item: PreviewItem) => TakenAs | null = firstTakenAs,
): Promise<{ readonly changes: Change[]; readonly left: { readonly where: string; readonly why: string }[] }> {
  const changes: Change[] = [];
  const left: { where: string; why: string }[] = [];
  for (const item of items) {
    try {
      const ready = item.ready ?? (await made(item, taken(item), file, ask));
      changes.push(...changesOf(ready.table, [ready.record]));
    } catch (error) {
      left.push({ where: item.where, why: error instanceof Error ? error.message : String(error) });
    }
  }
  return { changes, left };
}

async function made(
  item: PreviewItem,
  as: TakenAs | null,
  file: string,
  ask: AskSide,
): Promise<NonNullable<PreviewItem['ready']>> {
  if (as === null) throw new UserError('place-kind', 'The file does not say what this is; choose it in its line.');
  const id = `${as === 'site' ? 'site' : 'mark'}-${crypto.randomUUID().slice(0, 18)}`;
  return as === 'site' ? siteFrom(item, await ask(item), id, file) : markFrom(item, as, null, id, file);
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
