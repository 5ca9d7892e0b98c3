import type { Study } from '../../study/index.ts';
import { type Draw, fitting, heading, linked, paragraph, row, stack, tapped } from './flow.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet } from './sheet-types.ts';

/** A response table of many lines must not push everything else off the page, drawing units. */
const MOST_HEIGHT = 170;

/** Whom to call, in the order of the book's response table, with phone and radio. */
export function callBlock({ study, site }: PlanSheet): Draw {
  const high = study.angle?.planAs === 'high';
  const draws = study.call.flatMap((call, i) => callRows(call, high && i === 0));
  if (site.radio) draws.push(row('Radio here', site.radio));
  if (draws.length === 0) draws.push(paragraph('No line of the book’s response table applies here.', pens.text));
  return stack(
    [heading(high ? 'Whom to call, in this order' : 'Whom to call'), fitting(draws, 2, MOST_HEIGHT, 'in the book')],
    3,
  );
}

function callRows({ who, why, agency, phone, radio }: Study['call'][number], strong: boolean): Draw[] {
  const name = agency === null ? who : `${who}, ${agency}`;
  const reach = phone ?? radio ?? 'no number in the book';
  const more = [why, ...(phone !== null && radio !== null ? [`radio ${radio}`] : [])].filter((part) => part !== '');
  const dialled = telOf(phone);
  const head = row(name, reach, strong);
  const words = stack([dialled === null ? head : tapped(head), paragraph(more.join('; '), pens.textNote)], 0);
  return [dialled === null ? words : linked(dialled, words)];
}

/** A number that a phone can dial, as a `tel` address [source: rfc3966]; null for words of any other kind. */
function telOf(phone: string | null): string | null {
  if (phone === null || !/^\+?[\d\s().-]{3,30}$/.test(phone)) return null;
  const digits = phone.replace(/[^\d+]/g, '');
  return digits.length < 3 ? null : `tel:${digits}`;
}
