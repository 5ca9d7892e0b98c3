import { describe, expect, it } from 'vitest';
import { parsePosition } from '../../../src/geo/index.ts';
import { type Hit, isLike, readRoadMile, siteIndex, understand, wordsOf } from '../../../src/ui/call/search/index.ts';
import { madePack, manySites } from './sites.ts';

const bounds = { west: -128.1, south: 43.9, east: -127.9, north: 44.1 };
const reader = {
  pack: madePack,
  index: siteIndex(madePack.sites),
  readPosition: (text: string) => parsePosition(text, { bounds }),
};
const told = (hit: Hit): string => {
  if (hit.kind === 'site') return hit.site.id;
  if (hit.kind === 'mile') return `${hit.place.road.name} ${hit.place.mile}`;
  if (hit.kind === 'position') {
    const { position, question } = hit.reading;
    return `${position.lat.toFixed(4)},${position.lon.toFixed(4)}${question ? ` ${question.code}?` : ''}`;
  }
  return hit.sentence;
};
const meant = (text: string): string[] => understand(text, reader).map(told);

describe('what a text may mean', () => {
  it.each([
    ['kettle', 'kettle'],
    ['ket', 'kettle'],
    ['ketle bend', 'kettle'],
    ['kettle bned', 'kettle'],
    ['oak turnout', 'oak'],
    ['split oka', 'oak'],
    ['3rd culvert', 'culvert'],
    ['quary gate', 'quarry'],
  ])('a site by what is typed of its name: %s', (text, id) => {
    expect(meant(text)[0]).toBe(id);
  });

  it.each([
    ['lantern creek 4.5', 'Lantern Creek Road 4.5'],
    ['lantern creek rd mm 4.5', 'Lantern Creek Road 4.5'],
    ['Lantern Crk MM4.5', 'Lantern Creek Road 4.5'],
    ['mile 4.5 lantern creek', 'Lantern Creek Road 4.5'],
    ['4.5 mile lantern', 'Lantern Creek Road 4.5'],
    ['milepost 1,25 cinder grade', 'Cinder Grade Road 1.25'],
    ['cr 12 mp 1.25', 'Cinder Grade Road 1.25'],
    ['CR 12 1.25', 'Cinder Grade Road 1.25'],
    ['cindr grade 0.5', 'Cinder Grade Road 0.5'],
  ])('a road with its mile: %s', (text, place) => {
    expect(meant(text)[0]).toBe(place);
  });

  it('a mile alone is asked of every road that has it', () => {
    expect(meant('mile 0.5')).toEqual(['Cinder Grade Road 0.5', 'oak']);
    expect(meant('mm 5')[0]).toBe('Lantern Creek Road 5');
  });

  it('after a road with its mile come the sites of that road, nearest along it first', () => {
    // Mile 4.9 lies 1448 m from the first post; the culvert stands at 1500 m, the bend at 1200 m.
    expect(meant('lantern 4.9')).toEqual(['Lantern Creek Road 4.9', 'culvert', 'kettle']);
  });

  it('a mile that the road does not have, or a road without posts, is refused in a sentence', () => {
    expect(meant('lantern creek mm 9').at(-1)).toMatch(
      /^Lantern Creek Road has no mile 9: its markers run from 4 to 7/,
    );
    expect(meant('old quarry spur mile 0.5').at(-1)).toMatch(/^Old Quarry Spur has no two mile markers/);
  });

  it.each([
    ['44.0012, -128.0034', '44.0012,-128.0034'],
    ['N44 00.072 W128 00.204', '44.0012,-128.0034'],
    ['geo:44.0012,-128.0034', '44.0012,-128.0034'],
    ['-128.0034, 44.0012', '44.0012,-128.0034 swapped?'],
    ['44.0012, 128.0034', '44.0012,128.0034 sign?'],
    ['45.5, -128.0034', '45.5000,-128.0034 outside?'],
  ])('a position, questioned where it looks wrong: %s', (text, place) => {
    expect(meant(text)).toEqual([place]);
  });

  it('a pasted dispatch message: its position, its road and mile, a site that it names', () => {
    const message = `TC VEH OVER SIDE / UNIT 12 E41 T7
      LANTERN CREEK RD MM 4.5 NEAR THIRD CULVERT
      CALLER AGE 44  LAT 43.9990 LON -128.0120  CB 555-0100`;
    const hits = meant(message);
    expect(hits[0]).toBe('43.9990,-128.0120');
    expect(hits).toContain('Lantern Creek Road 4.5');
    expect(hits).toContain('culvert');
    expect(hits).not.toContain('kettle');
  });

  it('a number in a message that stands beside no marker word is no mile', () => {
    expect(
      readRoadMile('vehicle over the side cinder grade road unit 1 responding age 2', madePack.roads).places,
    ).toEqual([]);
  });

  it('nothing typed means nothing, and nonsense finds nothing', () => {
    expect(meant('  ')).toEqual([]);
    expect(meant('zzzzqqq')).toEqual([]);
  });
});

describe('words', () => {
  it('are compared without accents, marks and short forms', () => {
    expect(wordsOf('  Old-Quarry  Rd., Mtn Café ')).toEqual(['old', 'quarry', 'road', 'mountain', 'cafe']);
  });
  it.each([
    ['quary', 'quarry', true],
    ['qaurry', 'quarry', true],
    ['quarr', 'quarry', true],
    ['quarryx', 'quarry', true],
    ['qxarrz', 'quarry', false],
    ['oka', 'oak', false],
    ['la', 'lantern', false],
    ['lan', 'lantern', true],
  ])('%s for %s: %s', (typed, word, like) => {
    expect(isLike(typed, word)).toBe(like);
  });
});

describe('five thousand sites', () => {
  const sites = manySites(5000);
  const index = siteIndex(sites);
  it('finds a site by its number and by a wrong letter', () => {
    const site = sites[3210]!;
    expect(index.find(`${site.name.split(' ')[0]} 3210`)[0]).toBe(site);
    expect(index.find(site.name.replace('o', ''))[0]).toBe(site);
    expect(index.find('lantern').length).toBe(8);
  });
});
