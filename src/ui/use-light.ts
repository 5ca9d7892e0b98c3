import { useEffect, useState } from 'react';
import type { LightChoice } from './state/index.ts';

const dark = (): MediaQueryList => matchMedia('(prefers-color-scheme: dark)');

/** The light in force: the person's choice, else the system's, kept in step with it and written on the page's root. */
export function useLight(choice: LightChoice): 'day' | 'night' {
  const [system, setSystem] = useState(() => (dark().matches ? 'night' : 'day'));
  useEffect(() => {
    const query = dark();
    const follow = (): void => setSystem(query.matches ? 'night' : 'day');
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  const light = choice === 'system' ? (system as 'day' | 'night') : choice;
  // Set while rendering, so that whatever reads the tokens in an effect reads the new ones.
  document.documentElement.dataset.light = light;
  return light;
}
