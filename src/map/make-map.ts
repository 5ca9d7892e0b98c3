import { GPUInitializationError, type MapOptions, Map as MapView } from 'maplibre-gl';
import { UserError } from '../units/index.ts';

/** A map in its container; where the browser gives nothing to draw it with, `onRefused` cleans up and a sentence says so. */
export function makeMap(options: MapOptions, onRefused: () => void): MapView {
  try {
    return new MapView(options);
  } catch (error) {
    onRefused();
    if (!(error instanceof GPUInitializationError)) throw error;
    const sentence = 'This browser draws no map, it gives no WebGL 2 (an old graphics driver, or switched off).';
    throw new UserError('no-webgl', sentence, { cause: error });
  }
}
