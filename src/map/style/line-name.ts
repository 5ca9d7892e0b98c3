import type { SymbolLayerSpecification } from 'maplibre-gl';

/** How a name runs along its line. */
export const lineName = (font: string, size: number): SymbolLayerSpecification['layout'] & object => ({
  'symbol-placement': 'line',
  'symbol-spacing': 420,
  'text-field': ['get', 'name'],
  'text-font': [font],
  'text-size': size,
  'text-letter-spacing': 0.06,
  'text-max-angle': 38,
  'text-padding': 8,
});
