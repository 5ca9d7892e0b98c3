import type { SymbolLayerSpecification } from 'maplibre-gl';
import { italic } from './italic.ts';

/** How the name of a road or of water runs along its line: in italics. */
export const lineName = (font: string, size: number): SymbolLayerSpecification['layout'] & object => ({
  'symbol-placement': 'line',
  'symbol-spacing': 420,
  // In relief letters stand up to be read, as they do flat; laid on the ground they would be a third as high.
  'text-pitch-alignment': 'viewport',
  'text-field': ['get', 'name'],
  'text-font': [italic(font)],
  'text-size': size,
  'text-letter-spacing': 0.06,
  'text-max-angle': 38,
  'text-padding': 8,
});
