import { formatDecimalDegrees, type LonLat, parsePosition } from '../../../geo/index.ts';
import { FOOT_M, knToLbf, lbfToKn, type UnitSystem, UserError } from '../../../units/index.ts';
import { areaOfText, textOfArea } from './area-text.ts';
import type { Column } from './column.ts';

/** Kilograms in a pound (exact, 1959 agreement). */
const POUND_KG = 0.45359237;

/** The unit word of a column, empty where it has none. */
export function unitOf({ kind }: Pick<Column, 'kind'>, units: UnitSystem): string {
  const words: Partial<Record<Column['kind'], readonly [us: string, metric: string]>> = {
    length: ['ft', 'm'],
    mass: ['lb', 'kg'],
    force: ['lbf', 'kN'],
    ties: ['lbf', 'kN'],
  };
  return words[kind]?.[units === 'us' ? 0 : 1] ?? '';
}

/** A value as it stands in its field. */
export function cellText(column: Column, value: unknown, units: UnitSystem): string {
  if (value === null || value === undefined) return '';
  switch (column.kind) {
    case 'number':
    case 'length':
    case 'mass':
    case 'force':
      return figure(fromRecord(column.kind, value as number, units));
    case 'list':
    case 'choices':
    case 'some of':
      return (value as string[]).join(', ');
    case 'flag':
      return value ? 'yes' : 'no';
    case 'place':
      return formatDecimalDegrees(value as LonLat);
    case 'area':
      return textOfArea(value);
    case 'ties':
      return (value as Tie[])
        .map(({ end, ratedKn }) => (ratedKn === null ? end : `${end} ${figure(fromRecord('force', ratedKn, units))}`))
        .join(', ');
    default:
      return String(value);
  }
}

/** The value of what somebody typed; throws a `UserError` where it says nothing that the column can hold. */
export function cellValue(column: Column, typed: string, units: UnitSystem): unknown {
  const text = typed.trim();
  const { kind, label, empty, options = [] } = column;
  if (kind === 'notes') return typed;
  if (kind === 'list' || kind === 'choices' || kind === 'some of') {
    const list = text
      .split(/[,;\n]/)
      .map((word) => word.trim())
      .filter(Boolean);
    const strange = kind === 'choices' ? list.find((word) => !options.includes(word)) : undefined;
    if (strange !== undefined) throw refusal(label, strange, `one or more of ${options.join(', ')}`);
    return list.length === 0 && empty ? null : list;
  }
  if (kind === 'ties') return text === '' ? [] : text.split(/[,;\n]/).map((word) => tieOf(word.trim(), label, units));
  if (kind === 'flag' && !empty) return text === 'yes';
  if (text === '') {
    if (empty) return null;
    throw new UserError('cell-empty', `${label} is empty; give ${expected(column, units)}.`);
  }
  switch (kind) {
    case 'number':
    case 'length':
    case 'mass':
    case 'force':
      return toRecord(kind, numberOf(text, column, units), units);
    case 'flag':
      return text === 'yes';
    case 'place': {
      const read = parsePosition(text);
      if (!read.ok) throw read.error;
      return read.value.position;
    }
    case 'area':
      return areaOfText(text, units);
    default:
      return text;
  }
}

interface Tie {
  readonly end: 'front' | 'rear';
  readonly ratedKn: number | null;
}

function tieOf(word: string, label: string, units: UnitSystem): Tie {
  const found = /^(front|rear)(?:\s+([\d.]+))?$/i.exec(word);
  if (!found)
    throw refusal(label, word, `"front" or "rear" with its strength, such as "front ${units === 'us' ? 9000 : 40}"`);
  const end = found[1]!.toLowerCase() as Tie['end'];
  return { end, ratedKn: found[2] === undefined ? null : toRecord('force', Number(found[2]), units) };
}

function numberOf(text: string, column: Column, units: UnitSystem): number {
  const plain = text.replace(',', '.');
  if (/^-?\d*\.?\d+$/.test(plain)) return Number(plain);
  throw refusal(column.label, text, expected(column, units));
}

function expected(column: Column, units: UnitSystem): string {
  const { kind, options } = column;
  if (options) return `one of ${options.join(', ')}`;
  const unit = unitOf(column, units);
  if (kind === 'number' || unit !== '') return `a number${unit ? ` of ${unit}` : ''}`;
  const words: Partial<Record<Column['kind'], string>> = { day: 'a day', place: 'a position', area: 'an area' };
  return words[kind] ?? 'a word';
}

const refusal = (label: string, typed: string, wanted: string): UserError =>
  new UserError('cell', `${label} cannot be "${typed.slice(0, 40)}": expected ${wanted}; correct it.`);

type Measured = 'number' | 'length' | 'mass' | 'force';

function fromRecord(kind: Measured, value: number, units: UnitSystem): number {
  if (units === 'metric' || kind === 'number') return value;
  return kind === 'length' ? value / FOOT_M : kind === 'mass' ? value / POUND_KG : knToLbf(value);
}

/** Kept to a tenth of a millimetre, a gram, a newton: what was typed comes back as typed. */
function toRecord(kind: Measured, typed: number, units: UnitSystem): number {
  if (units === 'metric' || kind === 'number') return typed;
  if (kind === 'length') return Math.round(typed * FOOT_M * 1e4) / 1e4;
  return kind === 'mass' ? Math.round(typed * POUND_KG * 1e3) / 1e3 : Math.round(lbfToKn(typed) * 1e3) / 1e3;
}

/** Two decimals, none from a thousand on. */
const figure = (value: number): string =>
  String(Math.abs(value) < 1000 ? Math.round(value * 100) / 100 : Math.round(value));
