import { CAUTION, type Study } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';

/** Elevation source, cell, accuracy and dates of a study. */
export function ElevationLine({ study, units }: { readonly study: Study; readonly units: UnitSystem }) {
  const { terrain, check } = study;
  const rmse =
    terrain.verticalRmseM === null ? (
      <i className="assumed">vertical accuracy not stated, taken as unknown</i>
    ) : (
      `vertical RMSE ${small(terrain.verticalRmseM, units)}`
    );
  const also = terrain.sources.length > 1 ? ` and ${terrain.sources.length - 1} more` : '';
  return (
    <p className="note elevation-line">
      Elevation {terrain.source}
      {also}, {terrain.kind === 'unknown' ? 'kind not stated' : terrain.kind}, {terrain.crs},{' '}
      {formatLength(terrain.cellM, units)} cells, {rmse}, collected {terrain.collectedOn ?? 'on an unknown date'}.{' '}
      {check ? `Checked ${check.on}, ${check.by}.` : <span className="accent">Not checked in the field.</span>}
    </p>
  );
}

/** The caution that stands once on every screen. */
export const Caution = () => <p className="caution">{CAUTION}</p>;

/** Inches or centimetres, for an accuracy. */
const small = (metres: number, units: UnitSystem): string =>
  units === 'us' ? `${(metres / 0.0254).toFixed(metres < 0.254 ? 1 : 0)} in` : `${(metres * 100).toFixed(0)} cm`;
