import type { QuantityName } from '../../book/index.ts';

/** The steps of the check, in the order in which somebody walks them. `quantity`: the number that the step reads. */
export const steps = [
  { name: 'edge', words: 'Edge to anchor', title: 'Tape from the edge to the anchor', quantity: 'edgeToAnchorM' },
  { name: 'angle', words: 'Steepest stretch', title: 'Clinometer at the steepest stretch', quantity: 'angleDeg' },
  { name: 'barrier', words: 'Barrier', title: 'Barrier along the edge', quantity: null },
  { name: 'ground', words: 'Firm ground', title: 'Ground where apparatus would stand', quantity: null },
  { name: 'anchors', words: 'Two anchors', title: 'Two anchors, each with a photo', quantity: null },
  { name: 'radio', words: 'Radio', title: 'Radio at the edge', quantity: null },
  { name: 'up', words: 'Look up', title: 'The slope above the road', quantity: 'slopeAboveDeg' },
  { name: 'sign', words: 'Sign off', title: 'Sign off', quantity: null },
] as const satisfies readonly { name: string; words: string; title: string; quantity: QuantityName | null }[];

export type StepName = (typeof steps)[number]['name'];

/** What was found at a step that is no number, or that it could not be reached. */
export type Answers = Readonly<Partial<Record<StepName, string>>>;

/** The words of a step that could not be reached: its computed value stays. */
export const NOT_REACHED = 'not reached';

/** How far the tape is inked: steps with an answer, from the first on without a gap; 0 to 8. */
export function inkedSteps(answers: Answers): number {
  const gap = steps.findIndex(({ name }) => answers[name] === undefined);
  return gap < 0 ? steps.length : gap;
}

/** The first step after `from` without an answer, then those before it, the sign-off last. */
export function nextStep(from: StepName, answers: Answers): StepName {
  const at = steps.findIndex(({ name }) => name === from);
  const left = [...steps.slice(at + 1), ...steps.slice(0, at)].filter(({ name }) => name !== 'sign');
  return left.find(({ name }) => answers[name] === undefined)?.name ?? 'sign';
}

/** What the sign-off keeps of the check, a line a step. */
export const notesOf = (answers: Answers): string =>
  steps
    .filter(({ name }) => name !== 'sign')
    .map(({ name, words }) => `${words}: ${answers[name] ?? 'not looked at'}.`)
    .join('\n');

/** Steps that nobody did or reached, for the sign-off to say. */
export const missed = (answers: Answers): string[] =>
  steps
    .filter(({ name }) => name !== 'sign' && (answers[name] === undefined || answers[name] === NOT_REACHED))
    .map(({ words }) => words.toLowerCase());
