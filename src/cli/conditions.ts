import { type Conditions, fairConditions } from '../rigging/index.ts';
import { readWord } from './arguments.ts';

const words = ['wet', 'ice', 'night', 'wind'] as const;

/** The words of `--conditions`, separated by commas; what nobody names is fair. Throws `UsageError` on another word. */
export function readConditions(text: string | undefined): Conditions {
  const conditions = { ...fairConditions };
  for (const word of text?.split(',') ?? []) {
    const name = readWord('--conditions', word.trim(), words);
    if (name) conditions[name] = true;
  }
  return conditions;
}
