import { useEffect } from 'react';
import { useTool } from '../state/index.ts';
import { type Command, keyOf } from './command.ts';

const fields = 'input:not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable]';

/** Runs commands from the keyboard, but not while somebody types; one that cannot be done says why. */
export function useKeys(commands: readonly Command[]): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.isComposing || event.defaultPrevented) return;
      // What lies over the page has its own keys.
      if (document.querySelector(':modal')) return;
      if (event.target instanceof Element && event.target.matches(fields)) return;
      const key = keyOf(event);
      const command = commands.find((one) => one.key === key || (key === 'mod+y' && one.id === 'redo'));
      if (!command) return;
      event.preventDefault();
      const why = command.whyNot();
      if (why === null) command.run();
      else if (command.id !== 'put down' && command.id !== 'drop corner') useTool.setState({ said: why });
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [commands]);
}
