import { UserError } from '../units/index.ts';

/** Refuses a number that is missing or out of its range, in one sentence; a figure that is not there must never pass for a good one. */
export function requireNumber(name: string, value: number, least: number, most: number): void {
  if (value >= least && value <= most) return;
  const range = most === Number.POSITIVE_INFINITY ? `${least} or more` : `${least} to ${most}`;
  throw new UserError('rigging-input', `${name} is ${value}; it must be ${range}; measure it or leave the layout out.`);
}
