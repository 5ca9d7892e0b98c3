import type { MarkKind } from '../../book/index.ts';
import type { ToolName } from '../state/index.ts';

/** One cut of the stencil: what it puts on the map, its key and its short name. */
export interface Cut {
  readonly tool: Exclude<ToolName, 'look' | 'measure' | 'move'>;
  readonly key: string;
  readonly words: string;
}

const mark = (tool: MarkKind, key: string, words: string = tool): Cut => ({ tool, key, words });

/** The place for a new site. */
export const siteCut: Cut = { tool: 'site', key: 'e', words: 'site' };

/** The eighteen marks, two rows of nine. */
export const cuts: readonly Cut[] = [
  mark('tree', 't'),
  mark('rock', 'r'),
  mark('pole', 'p'),
  mark('wire', 'w'),
  mark('gate', 'g'),
  mark('sign', 'n'),
  mark('culvert', 'c'),
  mark('water', 'a'),
  mark('turnout', 'o'),
  mark('firm ground', 'f'),
  mark('soft ground', 's'),
  mark('barrier', 'b'),
  mark('wall', 'l'),
  mark('step', 'k'),
  mark('radio dead spot', 'd', 'dead spot'),
  mark('patient point', 'x'),
  { tool: 'spot', key: 'v', words: 'spot' },
  { tool: 'landing zone', key: 'z', words: 'landing zone' },
];
