import type { Study, StudyCall } from '../../../study/index.ts';

/** The one thing to do next: whom to ask for. */
export interface NextWords {
  readonly text: string;
  readonly more: string | null;
  readonly calls: readonly StudyCall[];
}

/** Whom to call, by the book's response table; planned as high the technical rope team stands first. */
export function nextOf(study: Study): NextWords | null {
  const { call, layouts, angle } = study;
  if (call.length === 0) return null;
  const high = angle?.planAs === 'high';
  // Two reasons may call the same team.
  const names = [...new Set(call.map(({ who }) => who))];
  const mend = high ? undefined : layouts[0]?.fits.short.find(({ unit }) => unit !== null);
  const text = `Next: ask for ${joined(names)}`;
  const more = [
    ...(mend ? [`${mend.unit} brings rope, ${mend.atMin} min`] : []),
    ...(high || layouts.length === 0 ? [] : [anchorWords(study)]),
    ...(high || !study.closure ? [] : [closedWords(study)]),
  ].join('; ');
  return { text, more: more === '' ? (call[0]!.why ?? null) : more, calls: call };
}

/** "Engine 2 anchors at 8 min": who stands at the far end of the leading haul. */
function anchorWords({ layouts, spots, arriving, marks }: Study): string {
  const { anchor, turn } = layouts[0]!;
  if (turn === null || turn === anchor) return 'hauled straight back';
  const unit = spots.find(({ id }) => id === anchor)?.apparatus;
  if (!unit) return `${marks.find(({ id }) => id === anchor)?.name ?? 'a tree or rock'} anchors`;
  const atMin = arriving.find((one) => one.unit === unit)?.atMin ?? 0;
  return atMin > 0 ? `${unit} anchors, ${atMin} min` : `${unit} anchors`;
}

const closedWords = ({ closure }: Study): string => {
  const lanes = closure!.lanesBlocked;
  if (closure!.kind === 'road closed') return 'closes the road';
  if (closure!.kind === 'one lane in turn') return 'one lane, traffic in turn';
  return lanes > 0 ? `closes ${lanes} lane${lanes === 1 ? '' : 's'}` : 'closes no lane';
};

const joined = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
