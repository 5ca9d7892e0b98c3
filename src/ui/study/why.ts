import type { Reason } from '../../rigging/index.ts';
import type { Origin, Study, StudyForce, StudyLayout, StudyReading } from '../../study/index.ts';

/** A number's reason as the margin shows it. */
export interface WhyCase {
  /** Names the figure that was tapped: the thread begins there. */
  readonly key: string;
  readonly title: string;
  /** Plain arithmetic over the names of the inputs; null where the rule is words alone. */
  readonly formula: string | null;
  readonly result: string | null;
  readonly inputs: readonly { readonly name: string; readonly value: string }[];
  readonly rule: string | null;
  readonly how: Origin['how'] | null;
  /** Sentences that belong to it. */
  readonly notes: readonly string[];
  readonly source: string | null;
}

const empty = { formula: null, result: null, inputs: [], rule: null, how: null, notes: [], source: null } as const;

/** Why a number of the ground is what it is: its origin by path. */
export function whyOrigin(study: Study, path: string, title: string, notes: readonly string[] = []): WhyCase {
  const origin = study.origins[path];
  const sigma = origin?.sigma === null || origin?.sigma === undefined ? [] : [`One sigma ${figure(origin.sigma)}.`];
  return {
    ...empty,
    key: path,
    title,
    ...(origin?.reading ? readingInputs(origin.reading) : {}),
    rule: origin?.rule ?? null,
    how: origin?.how ?? 'computed',
    notes: [...notes, ...sigma],
    source: study.terrain.source,
  };
}

/** A reading beside the computed value that it took the place of, and how far apart they lie. */
function readingInputs({ measured, computed, reason, betters }: StudyReading): Pick<WhyCase, 'inputs'> {
  const known = computed === null ? [] : [{ name: 'computed', value: figure(computed) }];
  const apart = computed === null ? [] : [{ name: 'apart', value: figure(measured - computed) }];
  const gentler = betters && reason ? [{ name: 'taken over because', value: reason }] : [];
  return { inputs: [{ name: 'measured', value: figure(measured) }, ...known, ...apart, ...gentler] };
}

/** Why a number of a layout is what it is; several quantities stand one under another, the asked one last. */
export function whyReason(layout: StudyLayout, key: string, title: string, ...quantities: string[]): WhyCase {
  const found = quantities.flatMap((name) => layout.reasons.filter(({ quantity }) => quantity === name));
  const last = found.at(-1);
  if (!last) return { ...empty, key, title, notes: layout.why, how: 'computed' };
  const inputs = new Map<string, number>();
  for (const { inputs: own } of found) for (const [name, value] of Object.entries(own)) inputs.set(name, value);
  return {
    ...empty,
    key,
    title,
    formula: found.map((one) => `${one.quantity} = ${plain(one.formula)}`).join('\n'),
    result: `${last.quantity} = ${figure(last.value)} ${last.unit}`.trim(),
    inputs: [...inputs].map(([name, value]) => ({ name, value: figure(value) })),
    how: 'computed',
    source: [...new Set(found.map(sourceOf))].join('; '),
  };
}

/** Why a check of force comes out as it does. */
export function whyForce(force: StudyForce, key: string): WhyCase {
  const { at, kn, capacityKn, factor, required, rule, towardDeg, points } = force;
  return {
    ...empty,
    key,
    title: `${at}: ${force.kind}`,
    formula: capacityKn === null ? null : 'factor = capacity / force',
    result:
      factor === null ? null : `factor = ${figure(factor)}, ${required === null ? 'none' : figure(required)} needed`,
    inputs: [
      { name: 'force, kN', value: figure(kn) },
      ...(capacityKn === null ? [] : [{ name: 'capacity, kN', value: figure(capacityKn) }]),
      ...(towardDeg === null ? [] : [{ name: 'toward, degrees true', value: figure(towardDeg) }]),
      ...(points === 2 ? [{ name: 'attachments shared', value: '2' }] : []),
    ],
    rule,
    how: 'computed',
  };
}

/** A number to four digits at most, never in powers of ten. */
export const figure = (value: number): string =>
  Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(value >= 1000 ? 6 : 4)));

const sourceOf = ({ source }: Reason): string =>
  source === 'practice' ? 'common practice, no source' : source === 'derived' ? 'statics and geometry' : source;

/** A formula as people write it. */
const plain = (formula: string): string =>
  formula.replaceAll(' ** ', '^').replaceAll(' * ', ' × ').replaceAll(' / ', ' ÷ ').replaceAll(' - ', ' − ');
