/** Something a person can do, as data: a key, a button and the list of keys are made from it. */
export interface Command {
  readonly id: string;
  readonly label: string;
  /** As a keyboard event names it; with "mod+" for Ctrl or the command key, "shift+" before letters. Null for none. */
  readonly key: string | null;
  /** Why it cannot be done now, one sentence; null where it can. */
  whyNot(): string | null;
  run(): void;
}

/** The key of an event as commands write it. */
export function keyOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>): string {
  const { key, ctrlKey, metaKey, shiftKey, altKey } = event;
  const letter = key.length === 1 ? key.toLowerCase() : key;
  const shifted = shiftKey && (key.length > 1 || /[a-z]/i.test(key));
  return `${altKey ? 'alt+' : ''}${ctrlKey || metaKey ? 'mod+' : ''}${shifted ? 'shift+' : ''}${letter}`;
}

/** A key as people read it. */
export const keyWords = (key: string): string =>
  key.replace('mod+', 'Ctrl ').replace('shift+', 'Shift ').replace('Escape', 'Esc').replace('Backspace', 'Back');
