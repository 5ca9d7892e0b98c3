import { describe, expect, it } from 'vitest';
import { restoreBook } from '../../../src/book/index.ts';
import {
  contestedFields,
  gaps,
  historyOf,
  invert,
  laterTime,
  nextTime,
  snapshotOf,
  updateId,
} from '../../../src/book/merge/index.ts';
import { contestedOf, Device, exchange, pair, remove, rename, sitesOf } from './devices.ts';

describe('two people', () => {
  it('who change two fields never meet', () => {
    const [a, b] = pair();
    a.edit([rename('s', 'Upper Bend')], 2000);
    b.edit([{ table: 'sites', id: 's', set: { notes: 'wet' } }], 2000);
    exchange(a, b);
    expect(sitesOf(a)[0]).toMatchObject({ name: 'Upper Bend', notes: 'wet' });
    expect(contestedOf(a)).toEqual([]);
    expect(snapshotOf(a.state)).toEqual(snapshotOf(b.state));
  });

  it('who change one field leave both values until somebody decides by an ordinary write', () => {
    const [a, b] = pair();
    a.edit([rename('s', 'Upper Bend')], 2000);
    b.edit([rename('s', 'Lower Bend')], 3000);
    exchange(a, b);
    expect(contestedOf(a)).toEqual([
      {
        table: 'sites',
        id: 's',
        field: 'name',
        values: [
          { value: 'Lower Bend', who: 'Officer b', device: 'b', atMs: 3000 },
          { value: 'Upper Bend', who: 'Officer a', device: 'a', atMs: 2000 },
        ],
      },
    ]);
    expect(sitesOf(a)[0]!.name).toBe('Lower Bend');
    // The value that is shown already can be chosen too.
    a.edit([rename('s', 'Lower Bend')], 4000);
    b.receive(a.log.values());
    expect([contestedOf(a), contestedOf(b)]).toEqual([[], []]);
  });

  it('who give one field the same value agree', () => {
    const [a, b] = pair();
    a.edit([rename('s', 'New Bend')]);
    b.edit([rename('s', 'New Bend')]);
    exchange(a, b);
    expect(contestedOf(a)).toEqual([]);
    expect(a.edit([rename('s', 'New Bend')])).toBeNull();
  });

  it('a correction holds although its clock is seventy years behind', () => {
    const [a, b] = pair();
    a.edit([rename('s', 'Wrong')], 4e12);
    b.receive(a.log.values());
    b.edit([rename('s', 'Right')], 1.7e12);
    exchange(a, b);
    expect([sitesOf(a)[0]!.name, contestedOf(a)]).toEqual(['Right', []]);
  });
});

describe('deletion', () => {
  it('can be taken back', () => {
    const [a] = pair();
    a.edit([remove('s')]);
    expect(sitesOf(a)[0]!.deleted).toBe(true);
    a.edit([{ table: 'sites', id: 's', set: { deleted: false } }]);
    expect(sitesOf(a)[0]!.deleted).toBe(false);
  });

  it.each([
    ['a change of the site', rename('s', 'Upper Bend')],
    [
      'a mark put beside it',
      {
        table: 'marks' as const,
        id: 'm',
        set: { siteId: 's', kind: 'tree', geometry: { type: 'Point', coordinates: [0, 0] } },
      },
    ],
  ])('that did not know of %s keeps the site in sight and asks', (_, change) => {
    const [a, b] = pair();
    a.edit([remove('s')], 2000);
    b.edit([change], 1500);
    exchange(a, b);
    for (const device of [a, b]) {
      expect(sitesOf(device)[0]!.deleted).toBe(false);
      expect(contestedOf(device)).toEqual([
        {
          table: 'sites',
          id: 's',
          field: 'deleted',
          values: [
            { value: false, who: 'Officer b', device: 'b', atMs: 1500 },
            { value: true, who: 'Officer a', device: 'a', atMs: 2000 },
          ],
        },
      ]);
    }
    const kept = new Device('c');
    kept.receive(a.log.values());
    kept.edit([{ table: 'sites', id: 's', set: { deleted: false } }]);
    expect([sitesOf(kept)[0]!.deleted, contestedOf(kept)]).toEqual([false, []]);
    a.edit([remove('s')]);
    expect([sitesOf(a)[0]!.deleted, contestedOf(a)]).toEqual([true, []]);
  });

  it('that knew of the change stands', () => {
    const [a, b] = pair();
    b.edit([rename('s', 'Upper Bend')]);
    exchange(a, b);
    a.edit([remove('s')]);
    b.receive(a.log.values());
    expect([sitesOf(b)[0]!.deleted, contestedOf(b)]).toEqual([true, []]);
  });
});

describe('the rest', () => {
  it('a record is left out of the book until what it must have has come', () => {
    const [a] = pair();
    const late = a.edit([rename('s', 'Upper')])!;
    const device = new Device('z');
    device.receive([late]);
    expect(sitesOf(device)).toEqual([]);
    expect(gaps(device.state.vector)).toEqual([{ actor: 'a', n: 1 }]);
    device.receive(a.log.values());
    expect(sitesOf(device)).toEqual(sitesOf(a));
  });

  it('a new record without what it must have is refused', () => {
    const device = new Device('z');
    expect(() => device.edit([rename('s', 'A')])).toThrow('This change: sites "s" has no place; give one.');
  });

  it('history tells who set what, oldest first', () => {
    const [a, b] = pair();
    b.edit([rename('s', 'C')], 2000, 'Rename site');
    exchange(a, b);
    expect(
      historyOf('sites', 's', a.log.values()).map(({ who, label, fields }) => [who, label, fields.length]),
    ).toEqual([
      ['Officer a', 'edit', 2],
      ['Officer b', 'Rename site', 1],
    ]);
  });

  it('a snapshot is a plain book', () => {
    const [a, b] = pair();
    a.edit([rename('s', 'X')]);
    b.edit([rename('s', 'Y')]);
    exchange(a, b);
    const book = JSON.parse(JSON.stringify(snapshotOf(a.state)));
    expect(restoreBook(book, 'F')).toEqual(snapshotOf(a.state));
  });

  it('a clock never runs backwards, and one that was years ahead is forgotten', () => {
    expect(nextTime([5000, 3], 4000)).toEqual([5000, 4]);
    expect(nextTime([5000, 3], 6000)).toEqual([6000, 0]);
    expect(nextTime([9e12, 3], 6000)).toEqual([6000, 0]);
    expect(laterTime([5, 0], [9e12, 0], 6000)).toEqual([5, 0]);
    expect(laterTime([5, 0], [7000, 1], 6000)).toEqual([7000, 1]);
  });

  it('another device can take back an update too', () => {
    const [a] = pair();
    const none = a.edit([rename('s', 'Q')])!;
    const stranger = new Device('z');
    stranger.receive([...a.log.values()]);
    const { drafts } = invert(stranger.state, [none], new Map([['a:1', a.log.get('a:1')!]]), 'undoes', {
      who: 'z',
      device: 'z',
      label: 'u',
    });
    expect(drafts.map(({ ops }) => ops)).toEqual([[['sites', 's', 'name', 'Bend', [updateId(none)], 'a:1']]]);
    expect(contestedFields(stranger.state.records.get('sites')!.get('s')!)).toEqual([]);
  });
});
