import type { Study } from '../../study/index.ts';
import { type Draw, paragraph } from './flow.ts';
import { sheetPens as pens } from './sheet-pens.ts';

/** Ways that stand beside the leading one on paper. */
const MOST = 3;

/** The leading way in bold, then the others by rank, with people and minutes; never for a place planned as high. */
export function waysBlock({ ways, angle }: Study): Draw {
  if (ways.length === 0 || angle?.planAs === 'high') return () => ({ svg: '', height: 0 });
  const told = ways.slice(0, MOST).map(({ kind, allowed, people, minutes }) => {
    if (!allowed) return `${kind} not with what comes`;
    const time = minutes.from === null ? 'no time can be told' : `${minutes.from} to ${minutes.to} min`;
    return `${kind}, ${people.count} people, ${time}`;
  });
  const lead = ways[0]!.allowed ? 'Leading way:' : 'Ways:';
  return paragraph(`${lead} ${told.join('; ')}.`, pens.text, lead);
}
