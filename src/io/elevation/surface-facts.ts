import type { TerrainKind } from '../../terrain/index.ts';
import { UserError } from '../../units/index.ts';
import type { ElevationOptions } from '../ports.ts';

/** What a raster's metadata items and the user say of the surface. */
export interface SurfaceFacts {
  readonly kind: TerrainKind;
  readonly verticalRmseM: number | null;
  readonly collectedOn: string | null;
}

/**
 * Kind, accuracy and date of a surface. Items read: TERRAIN_KIND ("bare earth" or "surface"), VERTICAL_RMSE_M (metres, one
 * sigma), COLLECTED_ON (ISO date). A stated accuracy of the user goes before the file's, the file's date before the user's: it tells
 * which events the heights are older than. The TIFF date is not read: it says
 * when the file was written, not when the ground was measured. Throws `UserError` for a contradicted kind or a broken item.
 */
export function surfaceFacts(
  items: ReadonlyMap<string, string>,
  options: ElevationOptions,
  source: string,
): SurfaceFacts {
  return {
    kind: kindOf(items.get('TERRAIN_KIND'), options.kind, source),
    verticalRmseM: options.verticalRmseM ?? rmse(items.get('VERTICAL_RMSE_M'), source),
    collectedOn: date(items.get('COLLECTED_ON'), source) ?? options.collectedOn ?? null,
  };
}

function kindOf(text: string | undefined, option: TerrainKind | undefined, source: string): TerrainKind {
  const said = text?.toLowerCase().replace(/[-_]/g, ' ');
  if (said !== undefined && said !== 'bare earth' && said !== 'surface' && said !== 'unknown') {
    throw new UserError(
      'metadata',
      `${source} states TERRAIN_KIND "${text}"; "bare earth" or "surface" is expected: correct it.`,
    );
  }
  const wanted = option === 'unknown' ? undefined : option;
  if (said === undefined || said === 'unknown') return wanted ?? 'unknown';
  if (wanted !== undefined && wanted !== said) {
    throw new UserError(
      'kind-contradiction',
      `${source} says that it is ${said === 'surface' ? 'a surface model' : 'bare earth'}, but ${wanted === 'surface' ? 'surface' : 'bare-earth'} was given; leave the terrain kind out or correct the file.`,
    );
  }
  return said;
}

function rmse(text: string | undefined, source: string): number | null {
  if (text === undefined) return null;
  const value = Number(text);
  if (text !== '' && value > 0 && Number.isFinite(value)) return value;
  throw new UserError(
    'metadata',
    `${source} states VERTICAL_RMSE_M "${text}", which is no length in metres over zero; correct it.`,
  );
}

function date(text: string | undefined, source: string): string | null {
  if (text === undefined || text === '') return null;
  if (/^\d{4}(-\d{2}(-\d{2})?)?$/.test(text)) return text;
  throw new UserError(
    'metadata',
    `${source} states COLLECTED_ON "${text}"; a date as 2024-05-31 is expected: correct it.`,
  );
}
