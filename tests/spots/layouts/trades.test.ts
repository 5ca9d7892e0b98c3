import { describe, expect, it } from 'vitest';
import { fairConditions } from '../../../src/rigging/index.ts';
import { findLayouts } from '../../../src/spots/index.ts';
import { UserError } from '../../../src/units/index.ts';
import { layoutsOf, type MadeSite, markAt, plane, questionOf, SITE_M, typicalSites } from '../layout-sites.ts';

const road = (left: number, right: number, more: MadeSite['bench'] = {}): MadeSite['bench'] => ({
  left: { kind: 'rise', widthM: () => left, slope: 1 },
  right: { kind: 'drop', widthM: () => right, slope: -0.6 },
  ...more,
});
const steep: MadeSite['slope'] = { angleDeg: 33, groundM: 60 };

describe('the trade that a crew looks at first', () => {
  it('6 m of room over 60 m of slope: many resets straight; along 30 m of shoulder: few turned', () => {
    const { layouts } = layoutsOf({ bench: road(3.5, 6.5), slope: steep });
    const straight = Math.min(...layouts.filter(({ kind }) => kind === 'straight').map(({ haul }) => haul.resets));
    const turned = layouts.find(({ kind }) => kind === 'turned')!;
    expect(straight).toBeGreaterThanOrEqual(8);
    expect(turned.haul.resets).toBeLessThanOrEqual(4);
    expect(turned.rank).toBe(1);
  });

  it('a narrow bend gives no turned haul inside the edges, and says why', () => {
    const on = (radiusM: number) =>
      layoutsOf({
        bench: road(2.8, 2.8, { curvature: () => -1 / radiusM }),
        slope: { angleDeg: 33, groundM: 30 },
      });
    const { layouts, noTurned } = on(11);
    expect(layouts.filter(({ kind }) => kind === 'turned')).toEqual([]);
    expect(noTurned).toMatch(/^No turned haul: .*(bends too much|too narrow)/);
    // With a little more room the chord just fits, and is not practical.
    for (const { key } of on(12).layouts) expect(key.practical).toBe(false);
  });
});

describe('nothing is told', () => {
  it('on screening-only data or a bench of assumed width', () => {
    const question = questionOf(typicalSites[1]!);
    const { ground } = question;
    for (const one of [
      { ...question, screeningOnly: true },
      { ...question, ground: { ...ground, bench: { ...ground.bench, how: 'assumed' as const } } },
    ]) {
      const { spots, layouts, noStraight, noTurned } = findLayouts(one);
      expect([spots, layouts]).toEqual([[], []]);
      expect([noStraight, noTurned].every((why) => why?.includes('too coarse'))).toBe(true);
    }
  });

  it('where nobody brings apparatus and nothing is marked', () => {
    const { layouts, noStraight } = findLayouts({ ...questionOf(typicalSites[1]!), arrivals: [] });
    expect(layouts).toEqual([]);
    expect(noStraight).toMatch(/nothing can be an anchor/);
  });

  it('of a slope too short to have an angle', () => {
    const question = questionOf(typicalSites[1]!);
    const { layouts, noTurned } = findLayouts({ ...question, descent: { ...question.descent, angle: null } });
    expect(layouts).toEqual([]);
    expect(noTurned).toMatch(/too short/);
  });
});

describe('planned as high', () => {
  it('the belay takes the full weight, and nobody makes contact from the parked engine', () => {
    const question = questionOf({ ...typicalSites[2]!, slope: { angleDeg: 46, groundM: 25, planAs: 'high' } });
    const { layouts } = findLayouts(question);
    expect(layouts.length).toBeGreaterThan(0);
    for (const { haul, people } of layouts) {
      expect(haul.tensionKn.belay).toBeCloseTo(5.05, 2);
      expect(people.contact).toBeNull();
    }
  });
});

describe('a book that wants it so', () => {
  it('has the belay take the full weight on any slope', () => {
    const question = questionOf(typicalSites[1]!);
    const plain = findLayouts(question).layouts;
    const held = findLayouts({ ...question, fullBelay: true }).layouts;
    expect(held.length).toBeGreaterThan(0);
    for (const { haul } of held) expect(haul.tensionKn.belay).toBeCloseTo(5.05, 2);
    expect(plain[0]!.haul.tensionKn.belay).toBeLessThan(3);
  });
});

describe('a tree that holds the main line, and no second mark', () => {
  const site: MadeSite = {
    bench: road(4, 6),
    slope: { angleDeg: 30, groundM: 25 },
    trees: [[SITE_M, -3.2, 0.45]],
  };
  const onTree = (one: MadeSite, pins = {}) => {
    const { layouts, spots } = findLayouts({ ...questionOf(one), pins });
    return { spots, layout: layouts.find(({ kind, anchor }) => kind === 'straight' && anchor.id === 'T1')! };
  };

  it('has an apparatus of its own for the belay, counted with its lanes, out of the field', () => {
    for (const pins of [{}, { anchor: 'T1' }]) {
      const { layout, spots } = onTree(site, pins);
      const { belay, spotIds, lanesBlocked, key } = layout;
      expect([belay.kind, belay.sharesWith, spotIds]).toEqual(['apparatus', null, [belay.id]]);
      const spot = spots.find(({ id }) => id === belay.id)!;
      expect(lanesBlocked).toBeGreaterThanOrEqual(spot.lanes.taken.length);
      expect(key.verdict).toBe('judge on site');
      const [from, to] = [spot.footprint.x - 5, spot.footprint.x + 5];
      expect(from > SITE_M + 1 || to < SITE_M - 1).toBe(true);
      for (const { kind, ok } of layout.forces.filter(({ at }) => at.includes('belay'))) {
        expect([kind, ok]).toEqual([kind, 'yes']);
      }
    }
  });

  it('shares the tree, and says so, where no apparatus comes or its factor would not be met', () => {
    const onIce: MadeSite = { ...site, conditions: { ...fairConditions, ice: true } };
    for (const one of [{ ...site, fleet: [] }, onIce]) {
      const { belay, why } = onTree(one).layout;
      expect([belay.id, belay.sharesWith]).toEqual(['T1', 'T1']);
      expect(why).toContain('Main line and belay share this anchor.');
    }
  });
});

describe('a pin', () => {
  const question = questionOf(typicalSites[1]!);
  const free = findLayouts(question);
  const turned = free.layouts.find(({ kind }) => kind === 'turned')!;

  it('holds its spot, everything else is worked out around it', () => {
    const other = free.spots.find(
      ({ id, use, stationM }) => use === 'anchor' && id !== turned.anchor.id && stationM > SITE_M + 25,
    )!;
    const { layouts, spots } = findLayouts({ ...question, spots: free.spots, pins: { anchor: other.id } });
    expect(layouts.length).toBeGreaterThan(0);
    expect(layouts.every(({ anchor }) => anchor.id === other.id)).toBe(true);
    expect(spots.some(({ id }) => id === other.id)).toBe(true);
    const turns = findLayouts({ ...question, spots: free.spots, pins: { turn: turned.turn!.id } });
    expect(turns.layouts.every(({ turn }) => turn?.id === turned.turn!.id)).toBe(true);
    expect(turns.noStraight).toMatch(/pinned/);
    expect(turns.layouts[0]!.id).toBe(turned.id);
  });

  it('that does not work stays listed with its problem, and leaves no layout', () => {
    const id = 'S:E1:750:62:90';
    const { layouts, spots, noTurned } = findLayouts({ ...question, pins: { anchor: id } });
    const pinned = spots.find((spot) => spot.id === id)!;
    expect(pinned.workable).toBe(false);
    expect(layouts).toEqual([]);
    expect(noTurned).toMatch(/^The pinned spot of E1 does not work: /);
  });

  it('moves the belay to a mark', () => {
    const { x, y } = { x: SITE_M - 2, y: 2.5 };
    const marks = [markAt('oak', 'tree', x, y, 0.4)];
    const { layouts } = findLayouts({ ...question, marks, pins: { belay: 'oak' } });
    expect(layouts.length).toBeGreaterThan(0);
    for (const { belay, key } of layouts) {
      expect([belay.id, belay.sharesWith]).toEqual(['oak', null]);
      expect(key.verdict).not.toBe('yes');
    }
  });

  it('on a pole is never an anchor', () => {
    const marks = [markAt('pole 4', 'pole', SITE_M + 15, 3)];
    const { layouts, noTurned } = findLayouts({ ...question, marks, pins: { anchor: 'pole 4' } });
    expect(layouts).toEqual([]);
    expect(noTurned).toMatch(/pole: that is never an anchor/);
  });

  it('that names nothing is refused in one sentence', () => {
    for (const id of ['tree 9', 'S:X9:750:0:90']) {
      expect(() => findLayouts({ ...question, pins: { anchor: id } })).toThrow(UserError);
    }
  });
});

describe('a marked tree', () => {
  it('is offered as the belay anchor and lowers no rank that the apparatus meets', () => {
    const question = questionOf(typicalSites[1]!);
    const [without] = findLayouts(question).layouts;
    const marks = [markAt('oak', 'tree', SITE_M - 1, 2.4, 0.4)];
    const [first] = findLayouts({ ...question, marks }).layouts;
    expect(first!.belay.id).toBe('oak');
    expect(first!.key.verdict).toBe('yes');
    expect([first!.turn!.id, first!.anchor.id]).toEqual([without!.turn!.id, without!.anchor.id]);
    expect(first!.forces.find(({ kind }) => kind === 'belay')!.ok).toBe('judge on site');
  });

  it('too thin or never measured is left alone', () => {
    const question = questionOf({ ...typicalSites[12]!, trees: [] });
    const marks = [markAt('thin', 'tree', SITE_M - 3, 2.3, 0.1), markAt('unknown', 'tree', SITE_M + 19, 2.3)];
    expect(plane.toLocal(plane.toLonLat({ x: 3, y: 4 })).x).toBeCloseTo(3, 6);
    expect(findLayouts({ ...question, marks }).layouts).toEqual([]);
  });
});
