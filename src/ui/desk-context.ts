import { createContext, useContext } from 'react';
import type { Desk, DeskWorkers } from './actions/index.ts';

/** The desk's actions and workers, for every screen. */
export const DeskContext = createContext<{ readonly desk: Desk; readonly workers: DeskWorkers } | null>(null);

/** The desk of the page. */
export function useActions(): { readonly desk: Desk; readonly workers: DeskWorkers } {
  const found = useContext(DeskContext);
  if (!found) throw new Error('No desk above this component.');
  return found;
}
