import { ok, type Result, refuse, UserError } from '../../units/index.ts';
import { choose } from './choose.ts';
import { geoAddressesIn, withoutGeoAddresses } from './geo-address.ts';
import { gridsIn } from './grids.ts';
import { type PairFound, pairsIn } from './pairs.ts';
import { questionOf } from './question.ts';
import { type Candidate, type DistrictBounds, type Fault, isFault, type PositionReading } from './reading.ts';
import { LONGEST_TEXT, tidyText, withDecimalPoints } from './tidy-text.ts';
import { tokensOf } from './tokens.ts';

/**
 * Reads the position in a text, WGS 84: in any usual form, alone or inside a pasted message. Without letters or headings the
 * latitude comes first. `bounds` is the box of the district; a position outside it, or one that looks swapped, doubled or
 * coarse, comes back with a `question` that a person must answer. A refusal is one sentence that says what was expected.
 */
export function parsePosition(
  text: string,
  { bounds = null }: { readonly bounds?: DistrictBounds | null } = {},
): Result<PositionReading> {
  if (text.length > LONGEST_TEXT) {
    return refuse(
      new UserError(
        'position-long',
        `This text has ${text.length} characters, over the ${LONGEST_TEXT} that are searched; paste the part with the position.`,
      ),
    );
  }
  const tidy = tidyText(text);
  if (/\bNAD ?-?27\b/.test(tidy)) {
    return refuse(
      new UserError(
        'position-datum',
        `${shown(text)} is in NAD 27, which lies up to 200 m aside; give it in WGS 84 or NAD 83.`,
      ),
    );
  }
  const read = readings(tidy, bounds);
  const usable = read.filter((found): found is Candidate => !isFault(found) && (found.strong || found.whole));
  const chosen = choose(usable, bounds);
  if (!chosen) return refuse(refusal(text, read));
  const { position, withinM, form } = chosen.candidate;
  return ok({ position, withinM, form, question: questionOf(chosen, bounds) });
}

/** Everything in a tidy text that may be a position, geo addresses and grid references first. */
function readings(tidy: string, bounds: DistrictBounds | null): (Candidate | Fault)[] {
  const addresses = geoAddressesIn(tidy);
  const rest = addresses.length > 0 ? withoutGeoAddresses(tidy) : tidy;
  const grids = gridsIn(rest, bounds);
  const points = withDecimalPoints(rest);
  const withCommas = points === null ? [] : best(pairsIn(tokensOf(points), true));
  const pairs = withCommas.some((found) => !isFault(found) && (found.strong || found.whole))
    ? withCommas
    : best(pairsIn(tokensOf(rest), false));
  return [...addresses, ...grids, ...pairs];
}

/** Pairs of a text without those that share numbers with a more telling one before or after them. */
function best(pairs: readonly PairFound[]): (Candidate | Fault)[] {
  const rank = ({ found }: PairFound): number =>
    isFault(found) ? 0 : (found.strong ? 2 : 0) + (found.whole ? 2 : 0) + (found.form === 'decimal degrees' ? 1 : 1.5);
  const kept: PairFound[] = [];
  for (const pair of [...pairs].sort((a, b) => rank(b) - rank(a) || a.start - b.start)) {
    const rival = kept.find((other) => pair.start < other.end && other.start < pair.end);
    if (!rival || (rank(rival) === rank(pair) && isOpen(pair))) kept.push(pair);
  }
  return kept.sort((a, b) => a.start - b.start).map(({ found }) => found);
}

/** Three bare decimals in a row make two pairs that share one; both are kept, and the person is asked. */
const isOpen = ({ found }: PairFound): boolean =>
  !isFault(found) && found.strong && !found.whole && found.form === 'decimal degrees';

function refusal(text: string, read: readonly (Candidate | Fault)[]): UserError {
  const fault = read.find(isFault);
  const how = 'write it like 44.0123, -128.0456 or 44° 0.738′ N, 128° 2.736′ W or 18S UJ 23486 06483.';
  return fault
    ? new UserError('position-fault', `${shown(text)} ${fault.fault}; ${how}`)
    : new UserError('position-unread', `${shown(text)} is not read as a position; ${how}`);
}

/** At most 60 characters of what was given, in quotation marks, without control and direction characters. */
function shown(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
  const plain = text.replace(/[\u0000-\u001F\u007F-\u009F\u200B-\u200F\u202A-\u202E\u2060-\u206F\uFEFF]+/g, ' ').trim();
  const cut = [...plain].slice(0, 60).join('');
  return `"${cut}${cut.length < plain.length ? '…' : ''}"`;
}
