/** A row of the table of horizontal systems. `refusal` says why one that EPSG knows cannot be used here. */
export interface HorizontalRow {
  readonly name: string;
  /** Definition for the projection library; empty where refused. */
  readonly definition: string;
  /** Accuracy of the shift to WGS 84, metres, or null where it is not stated. */
  readonly shiftAccuracyM: number | null;
  readonly refusal: Refusal | null;
}

/** Shift that needs a grid file; shift unknown or disputed; axes that do not point east and north; grads; projection not known. */
export type Refusal = 'grid' | 'shift' | 'axes' | 'grads' | 'projection';

export interface VerticalRow {
  readonly name: string;
  /** 'm', 'ft', 'us-ft', or the name of another unit. */
  readonly unit: string;
  /** False for depths. */
  readonly up: boolean;
}

export interface CompoundRow {
  readonly name: string;
  readonly horizontal: number;
  readonly vertical: number;
}

/** The coordinate reference systems that the program knows without a network, by EPSG code. [source: epsg-index] */
export interface EpsgTable {
  horizontal(code: number): HorizontalRow | null;
  vertical(code: number): VerticalRow | null;
  compound(code: number): CompoundRow | null;
}

let loading: Promise<EpsgTable> | null = null;

/** Loads the table, once: it is a part of its own that is fetched when the first raster is opened. */
export function loadEpsgTable(): Promise<EpsgTable> {
  loading ??= import('./epsg-table.json').then(({ default: rows }) => epsgTable(rows));
  return loading;
}

/** The table over its rows; their form is written in `config/epsg-table.mjs`. */
function epsgTable(rows: { horizontal: string[]; vertical: string[]; compound: string[] }): EpsgTable {
  const find = {
    horizontal: byCode(rows.horizontal),
    vertical: byCode(rows.vertical),
    compound: byCode(rows.compound),
  };
  return {
    horizontal(code) {
      const row = find.horizontal(code);
      if (!row) return null;
      const [, name, definition = '', accuracy = '', refusal = ''] = row;
      return {
        name,
        definition,
        shiftAccuracyM: accuracy === '' ? null : Number(accuracy),
        refusal: refusal === '' ? null : (refusal as Refusal),
      };
    },
    vertical(code) {
      const row = find.vertical(code);
      return row ? { name: row[1], unit: row[2], up: row[3] === 'up' } : null;
    },
    compound(code) {
      const row = find.compound(code);
      return row ? { name: row[1], horizontal: Number(row[2]), vertical: Number(row[3]) } : null;
    },
  };
}

function byCode(rows: readonly string[]): (code: number) => string[] | null {
  const places = new Map(rows.map((row, i) => [Number.parseInt(row, 10), i]));
  return (code) => {
    const place = places.get(code);
    return place === undefined ? null : rows[place].split('|');
  };
}
