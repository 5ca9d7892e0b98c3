import { angleRuleOf } from '../../book/index.ts';
import type { PlanSheet } from '../../plan/index.ts';
import { fairConditions } from '../../rigging/index.ts';
import { askOf, type DeskWorkers, questionOf } from '../actions/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { type SheetInputs, siteSheet } from './site-sheet.ts';

/** What a book of sheets came to: a site that cannot be worked out is left out and told. */
export interface SheetsMade {
  readonly sheets: readonly PlanSheet[];
  readonly leftOut: readonly string[];
}

export interface SheetsAsked extends Pick<SheetInputs, 'opened' | 'district'> {
  readonly sites: readonly { readonly id: string; readonly name: string }[];
  readonly study: DeskWorkers['study'];
  /** How many sites are done. */
  onDone(count: number): void;
}

/** The plan sheets of many sites by the book's own rule, dry by day, one site after the other. Rejects with an `AbortError`. */
export async function sheetsOf(
  { sites, study, onDone, ...desk }: SheetsAsked,
  signal: AbortSignal,
): Promise<SheetsMade> {
  const rule = angleRuleOf(desk.opened.book());
  const sheets: PlanSheet[] = [];
  const leftOut: string[] = [];
  for (const { id, name } of sites) {
    const question = questionOf({ kind: 'site', id });
    try {
      if (!question) continue;
      const ask = { ...askOf(question), rule, conditions: fairConditions };
      const answer = await study.call('study', ask, signal);
      sheets.push(await siteSheet({ ...desk, siteId: id, study: answer.study }));
    } catch (error) {
      signal.throwIfAborted();
      leftOut.push(`${name}: ${sentenceOf(error)}`);
    }
    onDone(sheets.length + leftOut.length);
  }
  return { sheets, leftOut };
}
