import { describe, expect, it } from 'vitest';
import { readRoadTags } from '../../../src/road/index.ts';
import { compareRank } from '../../../src/spots/index.ts';
import { layoutsOf, typicalSites } from '../layout-sites.ts';

const within = (value: number, wanted: number, by: number): void =>
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(by);

describe.each(typicalSites)('typical roadside $name', (site) => {
  const found = layoutsOf(site);
  const [first] = found.layouts;

  it('is raised as an instructor expects', () => {
    if (site.kind !== null) expect(first!.kind).toBe(site.kind);
    expect(first!.run.advantage).toBe(site.advantage);
    within(first!.haul.team.walking, site.team, 1);
    if (site.resets !== null) within(first!.haul.resets, site.resets, 1);
    if (site.people !== null) {
      within(first!.people.leastRaise.count, site.people[0], 1);
      within(first!.people.full.count, site.people[1], 1);
    }
  });

  it('names a belay anchor in every layout, and says why there is none of a kind', () => {
    expect(found.layouts.length).toBeGreaterThan(0);
    expect(found.layouts.length).toBeLessThanOrEqual(8);
    for (const layout of found.layouts) {
      expect(layout.belay.id).not.toBe('');
      expect(layout.why.length).toBeGreaterThan(0);
    }
    expect(found.noStraight === null).toBe(found.layouts.some(({ kind }) => kind === 'straight'));
    expect(found.noTurned === null).toBe(found.layouts.some(({ kind }) => kind === 'turned'));
  });
});

describe('what the typical roadsides turn on', () => {
  const of = (number: number) => layoutsOf(typicalSites[number - 1]!);

  it('8 % grade: the anchor stands up the road, and down the road nothing holds better', () => {
    const oneLane = readRoadTags({ highway: 'unclassified', surface: 'gravel', lanes: '1', oneway: 'no', width: '6' });
    // With one lane there is none to spare: what holds decides between both ways.
    for (const traits of [undefined, oneLane]) {
      const site = typicalSites[8]!;
      const { layouts } = layoutsOf(traits ? { ...site, traits } : site);
      expect([layouts[0]!.kind, layouts[0]!.along]).toEqual(['turned', 1]);
      const down = layouts.find(({ kind, along }) => kind === 'turned' && along === -1)!;
      if (traits) expect(compareRank(layouts[0]!.key, down.key).order).toBeLessThan(0);
    }
  });

  it('60 m with a turnout: rope short until mutual aid, no more than that', () => {
    const [first] = of(4).layouts;
    expect([first!.fits.firstAlarm.fit === 'yes', first!.fits.mutualAid.fit]).toEqual([false, 'yes']);
    expect(first!.fits.from!.atMin).toBe(25);
  });

  it('80 m: belay short even of 90 m ropes; 100 m: main 17, belay 21 m short, 2 stages with 90 m and 3 with 60 m', () => {
    const [first] = of(5).layouts;
    expect(first!.fits.mutualAid.short.map(({ line }) => line)).toEqual(['belay']);
    const [long] = of(6).layouts;
    expect(long!.fits.mutualAid.short.map(({ line, byM }) => [line, Math.round(byM)])).toEqual([
      ['belay', 21],
      ['main', 17],
    ]);
    expect(long!.stages!.map(({ count, ropeLengthM }) => [ropeLengthM, count])).toEqual([
      [90, 2],
      [60, 3],
    ]);
  });

  it('a lip of 50°: the turn near its factor on one attachment, the slip check told', () => {
    const [first] = of(7).layouts;
    const turn = first!.forces.find(({ kind }) => kind === 'turn')!;
    expect(turn.points === 2 || turn.factor! < 5.5).toBe(true);
    expect(first!.why.join(' ')).toMatch(/grab/);
  });

  it('a lone engine: main, belay and the turn of the hauling end on attachments of their own; no turned haul, said why', () => {
    const { layouts, noTurned } = of(11);
    const [first] = layouts;
    expect([first!.anchor.id, first!.belay.id, first!.handTurn!.id]).toEqual(Array(3).fill(first!.anchor.id));
    expect(first!.belay.sharesWith).toBe(first!.anchor.id);
    expect(first!.run.handTurns).toBe(1);
    expect(noTurned).toMatch(/second anchor/);
  });

  it('trees only: judged on site, never computed', () => {
    for (const { governing, forces } of of(13).layouts) {
      expect(governing.verdict).toBe('judge on site');
      const anchors = forces.filter(({ kind }) => kind === 'hold' || kind === 'strength' || kind === 'belay');
      expect(anchors.every(({ factor, ok }) => factor === null && ok === 'judge on site')).toBe(true);
    }
  });
});
