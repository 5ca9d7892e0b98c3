import { describe, expect, it } from 'vitest';
import { undoStacks } from '../../../src/book/merge/index.ts';
import { contestedOf, Device, exchange, pair, rename, site, sitesOf } from './devices.ts';

describe('undo', () => {
  it('walks back and forth, and a new edit ends the way forth', () => {
    const [a] = pair();
    for (const name of ['B', 'C']) a.edit([rename('s', name)]);
    const name = () => sitesOf(a)[0]!.name;
    const seen = [name()];
    for (const way of ['undoes', 'undoes', 'redoes', 'redoes', 'undoes'] as const) {
      a.turn(way);
      seen.push(name());
    }
    expect(seen).toEqual(['C', 'B', 'Bend', 'B', 'C', 'B']);
    a.edit([rename('s', 'D')]);
    expect(a.turn('redoes')).toBeNull();
  });

  it('outlives a restart: the stacks come from the log', () => {
    const [a] = pair();
    a.edit([rename('s', 'B')]);
    a.edit([rename('s', 'C')]);
    a.turn('undoes');
    expect(undoStacks(a.log.values())).toEqual(a.stacks);
    expect(a.stacks).toEqual({
      undo: [
        { ids: ['a:1'], target: null },
        { ids: ['a:2'], target: null },
      ],
      redo: [{ ids: ['a:4'], target: 'a:3' }],
    });
  });

  it('of a new site deletes it, redo brings it back', () => {
    const a = new Device('a');
    a.edit([site('s', { notes: 'wet' })]);
    a.turn('undoes');
    expect(sitesOf(a)[0]!.deleted).toBe(true);
    a.turn('redoes');
    expect(sitesOf(a)[0]).toMatchObject({ deleted: false, notes: 'wet' });
  });

  it('of a field that nobody had given brings back what it began with', () => {
    const [a] = pair();
    a.edit([{ table: 'sites', id: 's', set: { patients: 3 } }]);
    a.turn('undoes');
    expect(sitesOf(a)[0]!.patients).toBe(1);
  });

  it('leaves what somebody else has changed since, and says whose it is', () => {
    const [a, b] = pair();
    a.edit([{ table: 'sites', id: 's', set: { name: 'B', notes: 'wet' } }]);
    b.receive(a.log.values());
    b.edit([rename('s', 'C')]);
    exchange(a, b);
    const turned = a.turn('undoes');
    expect(turned!.kept).toEqual([{ table: 'sites', id: 's', field: 'name', who: 'Officer b' }]);
    expect(sitesOf(a)[0]).toMatchObject({ name: 'C', notes: '' });
  });

  it('never takes the value of somebody else for its own because an undo brought it back', () => {
    const [a, b] = pair();
    a.edit([rename('s', 'A1')]);
    b.receive(a.log.values());
    b.edit([rename('s', 'B1')]);
    exchange(a, b);
    a.edit([rename('s', 'A2')]);
    a.turn('undoes');
    expect(sitesOf(a)[0]!.name).toBe('B1');
    expect(a.turn('undoes')!.kept).toHaveLength(1);
    expect(sitesOf(a)[0]!.name).toBe('B1');
  });

  it('walks back over what had been brought forth', () => {
    const [a] = pair();
    a.edit([rename('s', 'B')]);
    a.turn('undoes');
    a.turn('redoes');
    a.edit([rename('s', 'C')]);
    a.turn('undoes');
    a.turn('undoes');
    expect(sitesOf(a)[0]!.name).toBe('Bend');
  });

  it('of a new site that somebody else has worked on leaves it', () => {
    const [a, b] = pair();
    b.edit([rename('s', 'C')]);
    exchange(a, b);
    expect(a.turn('undoes')!.kept).toEqual([{ table: 'sites', id: 's', field: 'name', who: 'Officer b' }]);
    expect(sitesOf(a)[0]!.deleted).toBe(false);
    expect(a.stacks).toEqual({ undo: [], redo: [{ ids: ['a:2'], target: 'a:1' }] });
  });

  it('of a decision opens the choice again', () => {
    const [a, b] = pair();
    a.edit([rename('s', 'Upper')], 1);
    b.edit([rename('s', 'Lower')], 2);
    exchange(a, b);
    a.edit([rename('s', 'Middle')], 3);
    a.turn('undoes', 4);
    const values = () => contestedOf(a).flatMap(({ values }) => values.map(({ value }) => value));
    expect(values().sort()).toEqual(['Lower', 'Upper']);
    a.turn('redoes', 5);
    expect([sitesOf(a)[0]!.name, contestedOf(a)]).toEqual(['Middle', []]);
    expect(undoStacks([...a.log.values()].filter(({ actor }) => actor === 'a'))).toEqual(a.stacks);
    a.turn('undoes', 6);
    expect(values().sort()).toEqual(['Lower', 'Upper']);
  });
});
