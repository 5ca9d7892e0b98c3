import type { LonLat } from '../../geo/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { useTool } from '../state/index.ts';
import type { Deps } from './deps.ts';

/** Measures between two taps; a third begins anew. */
export function createMeasure({ workers }: Pick<Deps, 'workers'>) {
  const set = useTool.setState;
  return async (at: LonLat): Promise<void> => {
    const before = useTool.getState().corners;
    const corners = before.length === 1 ? [before[0]!, at] : [at];
    set({ corners, measured: null, said: corners.length === 1 ? 'Tap the other end.' : null });
    if (corners.length < 2) return;
    try {
      const measured = await workers.study.call('measure', [corners[0]!, corners[1]!]);
      if (useTool.getState().corners === corners) set({ measured });
    } catch (error) {
      set({ said: sentenceOf(error) });
    }
  };
}
