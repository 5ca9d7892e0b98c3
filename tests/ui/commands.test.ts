import { expect, test } from 'vitest';
import { keyOf } from '../../src/ui/commands/command.ts';
import { typedNumber } from '../../src/ui/survey/typed-number.ts';

const key = (name: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>> = {}) =>
  keyOf({ key: name, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held });

test.each([
  [key('t'), 't'],
  [key('Z', { ctrlKey: true, shiftKey: true }), 'mod+shift+z'],
  [key('z', { metaKey: true }), 'mod+z'],
  [key('Enter', { shiftKey: true }), 'shift+Enter'],
  [key('/', { shiftKey: true }), '/'],
  [key('Escape'), 'Escape'],
])('%s', (made, wanted) => expect(made).toBe(wanted));

test.each([
  ['12', 12],
  [' 1,5 ', 1.5],
  ['.5', 0.5],
  ['-3', -3],
  ['', null],
  ['12 ft', Number.NaN],
  ['1e9', Number.NaN],
])('a typed "%s" is read as %s', (typed, value) => expect(typedNumber(typed)).toBe(value));
