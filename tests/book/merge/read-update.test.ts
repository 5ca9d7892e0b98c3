import { describe, expect, it } from 'vitest';
import {
  currentOps,
  historyOf,
  isNewer,
  readUpdate,
  requireSame,
  snapshotOf,
  type Update,
} from '../../../src/book/merge/index.ts';
import { Device, pair, sitesOf } from './devices.ts';

describe('updates at the door', () => {
  const [a] = pair();
  const good = (): Update => structuredClone(a.log.get('a:1')!);

  it('come through as they are', () => {
    expect(readUpdate(JSON.parse(JSON.stringify(good())), 'F')).toEqual(good());
  });

  it.each<[string, (update: Record<string, unknown>) => void, RegExp]>([
    [
      'a poisoned actor',
      (u) => {
        u.actor = '__proto__';
      },
      /unusable actor/,
    ],
    [
      'number zero',
      (u) => {
        u.n = 0;
      },
      /unusable n: expected 1 to/,
    ],
    [
      'an endless time',
      (u) => {
        u.t = [Number.POSITIVE_INFINITY, 0];
      },
      /unusable t\.0/,
    ],
    [
      'a field too many',
      (u) => {
        u.extra = 1;
      },
      /unusable extra/,
    ],
    [
      'a field twice',
      (u) => {
        u.ops = [
          ['sites', 's', 'name', 'A', []],
          ['sites', 's', 'name', 'B', []],
        ];
      },
      /writes a field twice/,
    ],
    [
      'a look ahead',
      (u) => {
        u.ops = [['sites', 's', 'name', 'A', ['a:9']]];
      },
      /replaces what came after it/,
    ],
    [
      'a bad predecessor',
      (u) => {
        u.ops = [['sites', 's', 'name', 'A', ['x']]];
      },
      /expected the id of an update/,
    ],
  ])('with %s are refused', (_, spoil, sentence) => {
    const update = good() as unknown as Record<string, unknown>;
    spoil(update);
    expect(() => readUpdate(update, 'F')).toThrow(sentence);
  });

  it.each([
    [
      'an unknown table',
      ['wells', 's', 'name', 'A', []],
      'a file: update a:1 writes to a table "wells" that a book does not have; take another copy.',
    ],
    [
      'an unknown field',
      ['sites', 's', '__proto__', 'A', []],
      'a file, update a:1: sites "s" has a field "__proto__" that no such record has; remove it.',
    ],
    [
      'a bad value',
      ['sites', 's', 'name', 7, []],
      'a file, update a:1: sites "s" has an unusable name: expected string, but 7 came; correct it.',
    ],
  ] as const)('with %s change nothing', (_, op, sentence) => {
    const device = new Device('z');
    expect(() => device.receive([{ ...good(), ops: [op] }])).toThrow(sentence);
    expect([device.state.vector.size, sitesOf(device)]).toEqual([0, []]);
  });

  it('under one number with two contents are a loud error', () => {
    expect(() => requireSame(good(), good(), 'F')).not.toThrow();
    expect(() => requireSame(good(), { ...good(), who: 'Officer x' }, 'F')).toThrow(/one device's book was copied/);
  });

  it('of a newer version are kept and passed on, not applied', () => {
    const newer = { v: 99, actor: 'q', n: 1, anything: true } as unknown as Update;
    expect(readUpdate(newer, 'F')).toBe(newer);
    expect(isNewer(newer)).toBe(true);
    const device = new Device('z');
    device.receive([newer, good()]);
    expect(snapshotOf(device.state).madeFrom).toEqual([
      { actor: 'a', n: 1 },
      { actor: 'q', n: 1 },
    ]);
    expect(historyOf('sites', 's', device.log.values())).toHaveLength(1);
  });

  it('of an older version are brought up where they are applied, and never rewritten', () => {
    const old: Update = { ...good(), ops: [['sites', 's', 'title', 'Bend', []]] };
    const steps = [
      ([table, id, field, value, over]: Update['ops'][number]) => [
        [table, id, field === 'title' ? 'name' : field, value, over] as const,
      ],
    ];
    expect(currentOps(old, 'F', steps)).toEqual([['sites', 's', 'name', 'Bend', []]]);
    expect(old.ops[0]![2]).toBe('title');
  });
});
