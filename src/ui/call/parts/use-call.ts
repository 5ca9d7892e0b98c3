import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import type { Call } from '../call.ts';
import type { CallState } from '../state.ts';

export const CallContext = createContext<Call | null>(null);

/** The actions. */
export function useCall(): Call {
  const call = useContext(CallContext);
  if (!call) throw new Error('A part of the call view stands outside its context.');
  return call;
}

/** The state; the part is drawn anew when it changes. */
export function useCallState(): CallState {
  const { store } = useCall();
  const [state, setState] = useState(store.get());
  useEffect(() => {
    setState(store.get());
    return store.follow(() => setState(store.get()));
  }, [store]);
  return state;
}
