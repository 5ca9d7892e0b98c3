import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readResources, resourcesOn } from '../../src/io/index.ts';

const demo = (name: string) => ({ name, text: readFileSync(`data/demo/${name}`, 'utf8') });
const files = {
  fleet: demo('fleet.json'),
  kit: demo('kit.json'),
  stations: demo('stations.json'),
  response: demo('response.json'),
};
type Name = keyof typeof files;
// biome-ignore lint/suspicious/noExplicitAny: a hand-broken file has no type
type Change = (json: any) => unknown;

/** The files with one of them changed by hand. */

function changed(name: Name, change: Change) {
  const json = JSON.parse(files[name].text);
  change(json);
  return { ...files, [name]: { name: files[name].name, text: JSON.stringify(json) } };
}

describe('the demo district’s fleet, kit, stations and response', () => {
  const district = readResources(files);

  it('is read whole: two rated eyes at each end of an engine, kits that the fleet names', () => {
    const engine = district.fleet.find(({ id }) => id === 'E1')!;
    expect(engine.attachments.filter(({ end }) => end === 'front')).toHaveLength(2);
    expect(engine.attachments.filter(({ end }) => end === 'rear')).toHaveLength(2);
    expect(engine.attachments.every(({ ratedKn }) => ratedKn === 40)).toBe(true);
    expect(district.kits.length).toBeGreaterThan(3);
    expect(district.stations).toHaveLength(2);
    expect(district.response.length).toBeGreaterThan(4);
  });

  it('sends each road its own alarm, and an unknown road the latest one', () => {
    expect(resourcesOn(district, 'Lantern Creek Road').arrivals[0].unit).toBe('Engine 1');
    expect(resourcesOn(district, 'Old Quarry Spur').arrivals[0].unit).toBe('Engine 2');
    expect(resourcesOn(district, null).arrivals[0].unit).toBe('Engine 2');
    expect(resourcesOn(district, 'Lantern Creek Road').how).toBe('book');
  });

  it('sends a road that nobody names the area for all others', () => {
    const others = readResources(changed('response', ({ areas }) => areas[0].roads.splice(0)));
    expect(resourcesOn(others, 'Nowhere Lane').arrivals[0].unit).toBe('Engine 1');
  });

  it.each<[string, Name, Change, RegExp]>([
    [
      'a wrong end',
      'fleet',
      (j) => (j.fleet[0].attachments[1].end = 'side'),
      /fleet\.json: fleet\.0\.attachments\.1\.end is unusable: expected .*"side" came/,
    ],
    [
      'a length of a slip',
      'fleet',
      (j) => (j.fleet[0].lengthM = 302),
      /fleet\.0\.lengthM is unusable: expected 1 to 30/,
    ],
    ['a missing mass', 'fleet', (j) => delete j.fleet[0].emptyMassKg, /fleet\.0\.emptyMassKg/],
    ['an unknown field', 'kit', (j) => (j.kits[0].colour = 'red'), /kits\.0\.colour/],
    [
      'an unknown kit',
      'fleet',
      (j) => (j.fleet[0].kitIds = ['no-kit']),
      /"E1" names kit "no-kit", which kit\.json does not list/,
    ],
    [
      'an apparatus that is not there',
      'response',
      (j) => (j.areas[0].arrivals[0].apparatusId = 'E9'),
      /"Engine 1" names apparatus "E9"/,
    ],
    [
      'a tier of another name',
      'response',
      (j) => (j.areas[0].arrivals[0].tier = 'first-arriving'),
      /areas\.0\.arrivals\.0\.tier/,
    ],
    ['the same id twice', 'kit', (j) => (j.kits[1].id = j.kits[0].id), /kit "engine-1-kit" is there twice/],
    ['another schema', 'stations', (j) => (j.schema = 'other@9'), /stations\.json: schema/],
  ])('refuses %s with one sentence that says where', (_what, name, change, words) => {
    let message = '';
    try {
      readResources(changed(name, change));
    } catch (error) {
      message = (error as Error).message;
    }
    expect(message).toMatch(words);
    expect(message.split('\n')).toHaveLength(1);
  });

  it('refuses what is no JSON', () => {
    expect(() => readResources({ ...files, kit: { name: 'kit.json', text: '{' } })).toThrow(/kit\.json is not JSON/);
  });
});
