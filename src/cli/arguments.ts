import { type ParseArgsConfig, parseArgs } from 'node:util';
import { UserError } from '../units/index.ts';

/** A command line that cannot be understood: exit 2, while bad input is exit 1. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

type Options = NonNullable<ParseArgsConfig['options']>;

/** Options of a command, strictly: an unknown option or a stray word is a `UsageError`. */
export function readOptions<T extends Options>(args: string[], options: T) {
  try {
    return parseArgs({ args: joinNegative(args), options, strict: true, allowPositionals: false }).values;
  } catch (error) {
    const sentence = error instanceof Error ? error.message.split('. ')[0]! : 'The options cannot be read';
    throw new UsageError(`${sentence}; see --help.`);
  }
}

/** Western longitudes begin with a dash: "--at -128,44" becomes "--at=-128,44", which no longer looks like an option. */
function joinNegative(args: readonly string[]): string[] {
  const joined: string[] = [];
  for (const arg of args) {
    const last = joined.at(-1);
    if (/^-\.?\d/.test(arg) && last?.startsWith('--') && !last.includes('='))
      joined[joined.length - 1] = `${last}=${arg}`;
    else joined.push(arg);
  }
  return joined;
}

/** "LON,LAT" in WGS 84 degrees. */
export function readPosition(option: string, text: string): { lon: number; lat: number } {
  const match = /^\s*(-?\d+(?:\.\d+)?)\s*,\s*(-?\d+(?:\.\d+)?)\s*$/.exec(text);
  const lon = match ? Number(match[1]) : Number.NaN;
  const lat = match ? Number(match[2]) : Number.NaN;
  if (!(Math.abs(lon) <= 180 && Math.abs(lat) <= 90)) {
    const swapped = Math.abs(lat) <= 180 && Math.abs(lon) <= 90 ? ' (longitude first)' : '';
    throw new UserError(
      'position',
      `${option} "${text}" is no position; give LON,LAT in degrees${swapped}, for example -128.0012,44.0034.`,
    );
  }
  return { lon, lat };
}

/** One of a closed list of words, or a `UsageError` that names them. */
export function readWord<T extends string>(
  option: string,
  text: string | undefined,
  words: readonly T[],
): T | undefined {
  if (text === undefined) return undefined;
  const found = words.find((word) => word === text);
  if (found === undefined) throw new UsageError(`${option} "${text}" is not one of ${words.join(', ')}.`);
  return found;
}

/** A number over zero. */
export function readPositive(option: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!(value > 0 && Number.isFinite(value))) {
    throw new UsageError(`${option} "${text}" is not a number over zero.`);
  }
  return value;
}

/** A day as YYYY-MM-DD. */
export function readDay(option: string, text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  const date = new Date(`${text}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(text) || Number.isNaN(date.getTime()) || !date.toISOString().startsWith(text))
    throw new UsageError(`${option} "${text}" is no day; give it as 2024-05-31.`);
  return text;
}

/** The value of an option that must be there. */
export function needed<T>(option: string, value: T | undefined): T {
  if (value === undefined) throw new UsageError(`${option} is missing; see --help.`);
  return value;
}

/** A web address of a folder, a slash at its end; null where none was given. */
export function addressOf(option: string, text: string | undefined): string | null {
  if (text === undefined) return null;
  if (!URL.canParse(text) || !/^https?:\/\/[^?#]+$/iu.test(text))
    throw new UsageError(`${option} "${text}" is no web address; give one like https://fire.example/book/.`);
  return text.endsWith('/') ? text : `${text}/`;
}
