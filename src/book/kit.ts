/** A rope of a kit. Strength is the maker's rated minimum; null where nobody read the label. */
export interface Rope {
  readonly lengthM: number;
  readonly diameterMm: number | null;
  readonly ratedKn: number | null;
  readonly count: number;
}

export const kitItemKinds = [
  'pulley',
  'haul grab',
  'sling',
  'carabiner',
  'descent device',
  'capture',
  'edge protection',
  'litter',
] as const;

/** Hardware or slings of one sort, with the rated strength of one. */
export interface KitItem {
  readonly kind: (typeof kitItemKinds)[number];
  readonly ratedKn: number | null;
  readonly lengthM: number | null;
  readonly count: number;
}

/** A rope kit as one apparatus or station keeps it. */
export interface Kit {
  readonly id: string;
  readonly name: string;
  readonly ropes: readonly Rope[];
  readonly items: readonly KitItem[];
}

/** Shipped kits: lengths and counts are common practice, no source; strengths are those of the class named beside them. */
export const defaultKits: readonly Kit[] = [
  { id: 'engine-kit', name: 'Engine rope kit', ropes: [generalRope(60, 2)], items: engineItems() },
  { id: 'aid-kit', name: 'Mutual aid rope kit', ropes: [generalRope(90, 2)], items: engineItems() },
];

/** General-use rope, 40 kN, 12.5 mm (recalled) [source: nfpa-1983]. */
function generalRope(lengthM: number, count: number): Rope {
  return { lengthM, diameterMm: 12.5, ratedKn: 40, count };
}

/** General-use hardware: pulley 36, carabiner 40 (recalled), descent device 22 kN [source: nfpa-1983]. */
function engineItems(): KitItem[] {
  const item = (
    kind: KitItem['kind'],
    ratedKn: number | null,
    count: number,
    lengthM: number | null = null,
  ): KitItem => ({
    kind,
    ratedKn,
    lengthM,
    count,
  });
  return [
    item('pulley', 36, 4),
    item('carabiner', 40, 16),
    item('descent device', 22, 2),
    item('haul grab', 7, 3),
    item('capture', null, 2),
    item('sling', 22, 6, 1.5),
    item('edge protection', null, 2),
    item('litter', null, 1),
  ];
}

/** Every rope of a kit by its length, metres, one entry a rope. A rope under the strength asked, or of unknown strength, is left out. */
export const ropeLengths = (kit: Kit, leastKn: number): number[] =>
  kit.ropes.flatMap((rope) =>
    rope.ratedKn !== null && rope.ratedKn >= leastKn ? Array<number>(rope.count).fill(rope.lengthM) : [],
  );

/**
 * Pickets driven in ordinary soil, pounds-force: reference values alone, never offered as an anchor [source: picket-manuals].
 */
export const picketReferenceLbf = { single: 700, 'three in line, 1-1-1': 1800, 'combination, 3-2-1': 4000 } as const;
