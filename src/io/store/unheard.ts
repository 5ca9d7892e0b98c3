import { holds, updateId, type Vector } from '../../book/merge/index.ts';

/** Ids of the updates that the disk holds and the screen does not. */
export function unheard(disk: Vector, screen: Vector): string[] {
  const found: string[] = [];
  for (const [actor, { upTo, beyond }] of disk) {
    const from = (screen.get(actor)?.upTo ?? 0) + 1;
    for (let n = from; n <= upTo; n++) found.push(updateId({ actor, n }));
    for (const n of beyond) found.push(updateId({ actor, n }));
  }
  return found.filter((id) => !holds(screen, id));
}
