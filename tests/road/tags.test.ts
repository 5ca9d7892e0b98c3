import { describe, expect, it } from 'vitest';
import { classify, lengthTagM, readRoadTags, speedKmh } from '../../src/road/index.ts';

describe('lengths', () => {
  it.each([
    ['6', 6],
    ['6.5 m', 6.5],
    ['6,5', 6.5],
    ['20 ft', 6.096],
    ["20'", 6.096],
    ['7\'6"', 2.286],
    ["7' 6", 2.286],
    ['0', null],
    ['narrow', null],
    ['6;7', null],
    ['-3', null],
    [undefined, null],
  ])('%s', (text, metres) => {
    if (metres === null) expect(lengthTagM(text)).toBeNull();
    else expect(lengthTagM(text)).toBeCloseTo(metres, 9);
  });
});

describe('speeds', () => {
  it.each([
    ['60', 60],
    ['45 mph', 72.42048],
    ['50 km/h', 50],
    ['none', null],
    ['XX:urban', null],
    [undefined, null],
  ])('%s', (text, kmh) => {
    if (kmh === null) expect(speedKmh(text)).toBeNull();
    else expect(speedKmh(text)).toBeCloseTo(kmh, 9);
  });
});

describe('carriageway', () => {
  it.each([
    [{ highway: 'primary', width: '7' }, 7, 'typed', 'width tag'],
    [{ highway: 'primary', width: '9', 'width:carriageway': '6.5' }, 6.5, 'typed', 'width:carriageway tag'],
    [{ highway: 'primary', lanes: '3' }, 9, 'assumed', '3 tagged lanes of 3 m'],
    [{ highway: 'primary', 'lanes:forward': '1', 'lanes:backward': '2' }, 9, 'assumed', '3 tagged lanes of 3 m'],
    [{ highway: 'primary', lanes: 'two' }, 6, 'assumed', '2 lanes of 3 m'],
    [{ highway: 'unclassified' }, 6, 'assumed', '2 lanes of 3 m'],
    [{ highway: 'track' }, 3, 'assumed', '1 lane of 3 m'],
    [{ highway: 'secondary', oneway: 'yes' }, 3, 'assumed', '1 lane of 3 m'],
    [{ highway: 'motorway' }, 6, 'assumed', '2 lanes of 3 m'],
    [{}, 6, 'assumed', '2 lanes of 3 m'],
  ] as const)('%o', (tags, valueM, how, rule) => {
    expect(readRoadTags(tags).carriageway).toEqual({ valueM, how, rule });
  });
});

describe('shoulders', () => {
  it.each([
    [{}, { present: null, widthM: null }, { present: null, widthM: null }],
    [{ shoulder: 'no' }, { present: false, widthM: null }, { present: false, widthM: null }],
    [
      { shoulder: 'right', 'shoulder:width': '1.5' },
      { present: false, widthM: null },
      { present: true, widthM: 1.5 },
    ],
    [{ shoulder: 'both' }, { present: true, widthM: null }, { present: true, widthM: null }],
    [
      { 'shoulder:left': 'yes', 'shoulder:left:width': '2' },
      { present: true, widthM: 2 },
      { present: null, widthM: null },
    ],
    [{ 'shoulder:width': '1' }, { present: true, widthM: 1 }, { present: true, widthM: 1 }],
  ])('%o', (tags, left, right) => {
    expect(readRoadTags(tags as Record<string, string>).shoulder).toEqual({ left, right });
  });
});

it('bridge, tunnel, one-way, divided, surface', () => {
  expect(readRoadTags({ bridge: 'viaduct' })).toMatchObject({ bridge: true, tunnel: false });
  expect(readRoadTags({ bridge: 'no', tunnel: 'building_passage' })).toMatchObject({ bridge: false, tunnel: true });
  expect(readRoadTags({ oneway: '-1' }).oneway).toBe('backward');
  expect(readRoadTags({ highway: 'motorway' })).toMatchObject({ oneway: 'forward', divided: true });
  expect(readRoadTags({ junction: 'roundabout' }).oneway).toBe('forward');
  expect(readRoadTags({ highway: 'primary', oneway: 'yes', dual_carriageway: 'yes' }).divided).toBe(true);
  expect(readRoadTags({ surface: 'fine_gravel' }).paved).toBe(false);
  expect(readRoadTags({ surface: 'concrete:plates' }).paved).toBe(true);
  expect(readRoadTags({ surface: 'moonrock' }).paved).toBeNull();
});

it.each([
  [{ highway: 'motorway_link' }, 'line', 'road'],
  [{ highway: 'track' }, 'line', 'road'],
  [{ highway: 'footway' }, 'line', 'trail'],
  [{ highway: 'service', area: 'yes' }, 'area', null],
  [{ highway: 'construction' }, 'line', null],
  [{ power: 'cable' }, 'line', null],
  [{ power: 'tower' }, 'point', 'pole'],
  [{ natural: 'tree' }, 'point', null],
  [{ waterway: 'dam' }, 'line', null],
  [{ landuse: 'reservoir' }, 'area', 'water'],
  [{ barrier: 'fence' }, 'line', null],
] as const)('%o as a %s is %s', (tags, shape, kind) => {
  expect(classify(tags, shape)).toBe(kind);
});
