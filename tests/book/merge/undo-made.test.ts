import { expect, test } from 'vitest';
import { snapshotOf } from '../../../src/book/merge/index.ts';
import { Device } from './devices.ts';

const mark = {
  table: 'marks',
  id: 'm1',
  set: { kind: 'tree', geometry: { type: 'Point', coordinates: [-128, 44] } },
} as const;
const shown = (device: Device): unknown => {
  const [record] = snapshotOf(device.state).tables.marks;
  return record && !record.deleted ? record.trunkDiameterM : 'gone';
};

test('a record goes with the undo of its making, also after an edit of it was taken back', () => {
  const a = new Device('a');
  a.edit([mark]);
  a.edit([{ table: 'marks', id: 'm1', set: { trunkDiameterM: 0.35 } }]);
  expect(shown(a)).toBe(0.35);
  a.turn('undoes');
  expect(shown(a)).toBeNull();
  expect(a.turn('undoes')?.kept).toEqual([]);
  expect(shown(a)).toBe('gone');
  a.turn('redoes');
  a.turn('redoes');
  expect(shown(a)).toBe(0.35);
});

test('it stays where somebody else has given a value', () => {
  const a = new Device('a');
  const b = new Device('b');
  a.edit([mark]);
  b.receive(a.log.values());
  b.edit([{ table: 'marks', id: 'm1', set: { trunkDiameterM: 0.5 } }]);
  a.receive(b.log.values());
  expect(a.turn('undoes')?.kept).toMatchObject([{ field: 'trunkDiameterM', who: 'Officer b' }]);
  expect(shown(a)).toBe(0.5);
});
