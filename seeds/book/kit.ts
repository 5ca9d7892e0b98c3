const rope = (lengthM: number, count: number, ratedKn = 40) => ({ lengthM, diameterMm: 12.5, ratedKn, count });
const item = (kind: string, count: number, ratedKn: number | null = null, lengthM: number | null = null) => ({
  kind,
  ratedKn,
  lengthM,
  count,
});

const engineItems = [
  item('pulley', 4, 36),
  item('carabiner', 12, 40),
  item('descent device', 2, 22),
  item('haul grab', 3, 7),
  item('capture', 2),
  item('sling', 6, 22, 1.5),
  item('edge protection', 2),
];

/** Rope kits: metres, millimetres, kilonewtons; the light rig's thin rope is rated too low to be counted. */
export const kits = [
  {
    id: 'engine-1-kit',
    name: 'Engine 1 rope kit',
    ropes: [rope(60, 2)],
    items: [...engineItems, item('litter', 1)],
  },
  { id: 'engine-2-kit', name: 'Engine 2 rope kit', ropes: [rope(60, 2)], items: engineItems },
  {
    id: 'truck-kit',
    name: 'Truck 1 rope kit',
    ropes: [rope(45, 1)],
    items: [item('pulley', 6, 36), item('carabiner', 20, 40), item('edge protection', 2), item('litter', 1)],
  },
  {
    id: 'light-kit',
    name: 'Light rig 2 rope kit',
    ropes: [{ lengthM: 30, diameterMm: 11, ratedKn: 27, count: 1 }],
    items: [item('pulley', 2, 36), item('carabiner', 6, 40), item('sling', 2, 22, 1.5)],
  },
  { id: 'aid-kit', name: 'Mutual aid rope kit', ropes: [rope(90, 2)], items: engineItems },
];
