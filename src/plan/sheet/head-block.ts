import { formatDegreesMinutes, formatUsng } from '../../geo/index.ts';
import { STOP_LINE } from '../../study/index.ts';
import { element, text } from '../svg.ts';
import { classRing } from './class-ring.ts';
import { type Draw, paragraph, stack } from './flow.ts';
import { linesOf, widthOf } from './measure.ts';
import { qrSvg, qrWords } from './qr.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet } from './sheet-types.ts';

const RING = 38;
const QR = 84;
/** The quiet zone is paper: the code may stand in the margin by so much. */
const QR_OUT = 7;

/** Name, road and side; both coordinate forms, district and radio; the code. */
export const headBlock =
  (sheet: PlanSheet): Draw =>
  ({ x, y, width }) => {
    const { study, site, mile, district, address } = sheet;
    const { road, sideWords } = study.site;
    const left = x + RING + 12;
    const code = x + width - QR + QR_OUT;
    const right = code - 2;
    const told = [
      formatDegreesMinutes(study.site),
      `US National Grid ${formatUsng(study.site) ?? 'does not reach here'}`,
      district,
      ...(site.radio ? [`Radio ${site.radio}`] : []),
    ];
    const widest = Math.max(...told.map((words) => widthOf(words, pens.place)));
    const room = right - Math.min(widest, width * 0.4) - 10 - left;
    const [name = ''] = linesOf(site.name, room, pens.siteName);
    const shown = name.length < site.name.trim().length ? `${name}…` : name;
    const where = [road.name ?? 'Unnamed road', ...(mile === null ? [] : [`mile ${mile}`])].join(', ');
    const under = stack(
      [paragraph(where, pens.where), paragraph(sideWords, pens.where)],
      1,
    )({
      ...{ x: left, y: y + 32, width: room },
    });
    const lines = told.map((words, i) =>
      text(right, y + 14 + i * 15.5, linesOf(words, width * 0.42, pens.place)[0] ?? '', {
        ...pens.place,
        'text-anchor': 'end',
      }),
    );
    const svg = [
      classRing(study, x, y + 4, RING),
      text(left, y + 24, shown, pens.siteName),
      under.svg,
      lines.join(''),
      qrSvg(qrWords(address, site.id, study.site), code, y - QR_OUT, QR),
    ];
    return { svg: svg.join(''), height: Math.max(QR - 2 * QR_OUT, 32 + under.height, 14 + told.length * 15.5) };
  };

/** The stop line in paper on black, what else stops, and the sentence. */
export const sentenceBlock = (sheet: PlanSheet): Draw => {
  const { study, stops } = sheet;
  const high = study.sentence.startsWith(STOP_LINE);
  const rest = high ? study.sentence.slice(STOP_LINE.length).trim() : study.sentence;
  const also = [
    ...stops,
    ...study.warnings
      .filter(
        ({ severity, text: words }) => severity === 'stop' && !study.sentence.includes(words) && !stops.includes(words),
      )
      .map(({ text: words }) => words),
  ];
  const opening = /^Plan as [a-z]+(?:, undecided)?:/u.exec(rest)?.[0] ?? '';
  const pen = rest.length > 420 || also.length > 0 ? pens.planSmall : pens.plan;
  return stack(
    [
      ...(high ? [stopBar(STOP_LINE)] : []),
      ...also.map((words) => paragraph(`Stop: ${words}`, pens.also, 'Stop:')),
      paragraph(rest, pen, opening),
    ],
    4,
  );
};

const stopBar =
  (words: string): Draw =>
  ({ x, y, width }) => {
    const lines = linesOf(words, width - 20, pens.stopText);
    const height = lines.length * 24 + 10;
    const bar = element('rect', { class: 'stop-bar', fill: '#000000', x, y, width, height });
    return { svg: bar + lines.map((line, i) => text(x + 10, y + 23 + i * 24, line, pens.stopText)).join(''), height };
  };
