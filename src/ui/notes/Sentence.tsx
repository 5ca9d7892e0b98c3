import { STOP_LINE } from '../../study/index.ts';

/** The study's sentence as said on the radio: the stop line above it where there is one, its first words in accent. */
export function Sentence({ words }: { readonly words: string }) {
  const stop = words.startsWith(STOP_LINE);
  const rest = keepUnits(stop ? words.slice(STOP_LINE.length).trim() : words);
  const lead = /^Plan as [^:]+:/.exec(rest)?.[0];
  return (
    <>
      {stop && <p className="stop-line">{STOP_LINE}</p>}
      <h1 className="sentence" data-testid="sentence">
        {lead && <em>{lead}</em>}
        {lead ? rest.slice(lead.length) : rest}
      </h1>
    </>
  );
}

/** A figure and its unit stay on one line. */
const keepUnits = (words: string): string => words.replace(/(\d) (ft|m|min)\b/g, '$1\u00a0$2');
