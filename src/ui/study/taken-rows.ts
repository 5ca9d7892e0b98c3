import { type FieldValue, fieldValue } from '../../book/checks/index.ts';
import type { CorrectionRecord, MeasurementRecord, QuantityName } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';

/** A quantity that can be read on the ground: what was computed, what was measured, what counts. */
export interface TakenRow {
  readonly quantity: QuantityName;
  readonly label: string;
  readonly unit: 'degrees' | 'metres';
  /** Where its origin stands in the study. */
  readonly path: string;
  readonly computed: number | null;
  readonly range: readonly [number, number] | null;
  readonly readings: readonly MeasurementRecord[];
  readonly counts: FieldValue;
}

/** Always offered; the others once somebody has read them or asks for them. */
export const mainQuantities: readonly QuantityName[] = ['angleDeg', 'edgeOffsetM', 'dropM'];

/** Rows of a site, the main ones first. `asked`: further quantities to show. */
export function takenRows(
  study: Study,
  readings: readonly MeasurementRecord[],
  corrections: readonly CorrectionRecord[],
  asked: readonly QuantityName[],
): TakenRow[] {
  return (Object.keys(found) as (keyof typeof found)[])
    .filter(
      (name) =>
        mainQuantities.includes(name) ||
        asked.includes(name) ||
        readings.some(({ reading }) => reading.quantity === name),
    )
    .map((quantity) => {
      const { label, path, of } = found[quantity]!;
      const { value, range = null, stretchM = null } = computedOf(study, quantity) ?? of(study);
      return {
        quantity,
        label,
        path,
        unit: quantity.endsWith('Deg') ? 'degrees' : 'metres',
        computed: value,
        range,
        readings: readings.filter(({ reading }) => reading.quantity === quantity),
        counts: fieldValue(quantity, { value, stretchM }, readings, corrections, null, study.site),
      };
    });
}

/** What was computed before a reading took its place in the study. */
function computedOf(study: Study, quantity: QuantityName): Found | null {
  const row = study.field.find((one) => one.quantity === quantity);
  if (quantity === 'clearBeforeM' || quantity === 'clearAfterM') return null;
  return row ? { value: row.computed, range: row.computedRange, stretchM: row.stretchM } : null;
}

interface Found {
  readonly value: number | null;
  readonly range?: readonly [number, number] | null;
  readonly stretchM?: readonly [number, number] | null;
}

/** Standard normal value below which 95 % lie (derived). */
const Z95 = 1.645;

/** What the study found of each quantity that can be read. */
const found: Partial<Record<QuantityName, { label: string; path: string; of(study: Study): Found }>> = {
  angleDeg: {
    label: 'Governing angle',
    path: 'angle.governingDeg',
    of: ({ angle }) => ({
      value: angle?.governingDeg ?? null,
      range: angle?.rangeDeg ?? null,
      stretchM: angle?.stretchM ?? null,
    }),
  },
  edgeOffsetM: {
    label: 'Edge from the road’s middle',
    path: 'edge.offsetM',
    of({ edge, bench }) {
      if (!edge) return { value: null };
      const value = Math.abs(edge.offsetM - (bench?.lineShiftM ?? 0));
      const band = Z95 * edge.offsetSigmaM;
      return { value, range: [Math.max(0, value - band), value + band] };
    },
  },
  dropM: { label: 'Drop', path: 'descent.dropM', of: ({ descent }) => ({ value: descent?.dropM ?? null }) },
  groundLengthM: {
    label: 'Length along the ground',
    path: 'descent.groundLengthM',
    of: ({ descent }) => ({ value: descent?.groundLengthM ?? null }),
  },
  lipAngleDeg: { label: 'Lip', path: 'edge.lipAngleDeg', of: ({ edge }) => ({ value: edge?.lipAngleDeg ?? null }) },
  stepHeightM: {
    label: 'Highest step',
    path: 'descent.steps',
    of: ({ descent }) => ({
      value: descent ? Math.max(0, ...descent.steps.map(({ heightM }) => heightM)) : null,
    }),
  },
  edgeToAnchorM: {
    label: 'Edge to anchor, straight haul',
    path: 'layouts.haulFieldM',
    of: ({ layouts }) => ({ value: layouts.find(({ kind }) => kind === 'straight')?.haulFieldM ?? null }),
  },
  benchWidthM: { label: 'Road bench', path: 'bench.widthM', of: ({ bench }) => ({ value: bench?.widthM ?? null }) },
  gradeDeg: {
    label: 'Grade',
    path: 'bench.gradeDeg',
    of: ({ bench }) => ({ value: bench ? Math.abs(bench.gradeDeg) : null }),
  },
  crossfallDeg: {
    label: 'Crossfall',
    path: 'bench.crossfallDeg',
    of: ({ bench }) => ({ value: bench ? Math.abs(bench.crossfallDeg) : null }),
  },
  slopeAboveDeg: {
    label: 'Slope above',
    path: 'above.angleDeg',
    of: ({ above, bench }) => ({ value: above?.angleDeg ?? (bench ? 0 : null) }),
  },
  clearBeforeM: {
    label: 'Clear road back along the drawing',
    path: 'layouts.roomBeforeM',
    of: () => ({ value: Number.POSITIVE_INFINITY }),
  },
  clearAfterM: {
    label: 'Clear road on along the drawing',
    path: 'layouts.roomAfterM',
    of: () => ({ value: Number.POSITIVE_INFINITY }),
  },
  sightBeforeM: {
    label: 'Sight back along the drawing',
    path: 'closure.sightM',
    of: ({ closure }) => ({ value: closure?.sightM.before ?? null }),
  },
  sightAfterM: {
    label: 'Sight on along the drawing',
    path: 'closure.sightM',
    of: ({ closure }) => ({ value: closure?.sightM.after ?? null }),
  },
};

/** Quantities that can be asked for beside the main ones. */
export const furtherQuantities = (Object.keys(found) as QuantityName[]).filter(
  (name) => !mainQuantities.includes(name),
);
export const quantityLabel = (name: QuantityName): string => found[name]?.label ?? name;
