import { STOP_LINE, type Study } from '../study/index.ts';
import { heldWidth } from './letter-widths.ts';
import type { Pens } from './pens.ts';
import { element, escapeXml, text } from './svg.ts';
import { textBlock } from './text-block.ts';
import { advance } from './text-width.ts';
import { wrap } from './wrap.ts';

const LEADING = 25;

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Where it is, the stop line of a place planned as high, and the sentence. */
export function studyHead(study: Study, place: Place, pens: Pens): { svg: string; height: number } {
  const { x, y, width } = place;
  const { road, sideWords } = study.site;
  const where = textBlock(`${road.name ?? 'Unnamed road'}, ${sideWords}`, place, pens.siteLine, 'serif');
  let svg = where.svg;
  let next = y + where.height + 4;
  let sentence = study.sentence;
  if (sentence.startsWith(STOP_LINE)) {
    const stop = stopBlock({ x, y: next, width }, pens);
    svg += stop.svg;
    next += stop.height + 6;
    sentence = sentence.slice(STOP_LINE.length).trim();
  }
  const told = toldBlock(sentence, { x, y: next, width }, pens);
  return { svg: svg + told.svg, height: next + told.height - y };
}

/** The sentence, its opening words in accent. */
function toldBlock(sentence: string, { x, y, width }: Place, pens: Pens): { svg: string; height: number } {
  const size = pens.sentence['font-size'];
  const lines = wrap(sentence, width, advance(size, 'serif'));
  const svg = lines.map((line, i) => {
    const opening = i === 0 ? (/^Plan as [a-z]+[:,]/u.exec(line)?.[0] ?? '') : '';
    const first = opening === '' ? '' : element('tspan', pens.opening, escapeXml(opening));
    return element(
      'text',
      { ...pens.sentence, ...heldWidth(line, pens.sentence), x, y: y + size + i * LEADING },
      first + escapeXml(line.slice(opening.length)),
    );
  });
  return { svg: svg.join(''), height: lines.length * LEADING + 2 };
}

/** The stop line in paper on a bar of ink. */
function stopBlock({ x, y, width }: Place, pens: Pens): { svg: string; height: number } {
  const lines = wrap(STOP_LINE, width - 24, advance(18, 'serif') * 1.06);
  const height = lines.length * 24 + 16;
  const bar = element('rect', { ...pens.accentFill, class: 'stop-bar accent-fill', x, y, width, height });
  return { svg: bar + lines.map((line, i) => text(x + 12, y + 26 + i * 24, line, pens.stopLine)).join(''), height };
}
