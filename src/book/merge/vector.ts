import { partsOfId } from './update.ts';

/** Which updates a book holds: of each actor all up to `upTo`, and those of `beyond` that came before the ones between. */
export type Vector = Map<string, { upTo: number; beyond: Set<number> }>;

/** True where the update is held. */
export function holds(vector: Vector, id: string): boolean {
  const { actor, n } = partsOfId(id);
  const entry = vector.get(actor);
  return entry !== undefined && (n <= entry.upTo || entry.beyond.has(n));
}

/** Notes an update as held. */
export function note(vector: Vector, actor: string, n: number): void {
  let entry = vector.get(actor);
  if (!entry) {
    entry = { upTo: 0, beyond: new Set() };
    vector.set(actor, entry);
  }
  if (n <= entry.upTo) return;
  entry.beyond.add(n);
  while (entry.beyond.delete(entry.upTo + 1)) entry.upTo += 1;
}

/** How many updates of each actor are held without a gap, by actor: what a peer needs to know to send the rest. */
export const heads = (vector: Vector): [actor: string, n: number][] =>
  [...vector].map(([actor, { upTo }]): [string, number] => [actor, upTo]).sort(([a], [b]) => (a < b ? -1 : 1));

/** The numbers that are missing between those held, by actor. */
export function gaps(vector: Vector): { actor: string; n: number }[] {
  const missing: { actor: string; n: number }[] = [];
  for (const [actor, { upTo, beyond }] of vector) {
    const last = Math.max(upTo, ...beyond);
    for (let n = upTo + 1; n < last; n++) if (!beyond.has(n)) missing.push({ actor, n });
  }
  return missing;
}
