import type { SheetCardLine } from './sheet-types.ts';

/** Line headings of the right-hand column: a word and its meaning, parted by a colon. */
export const PAIR_HEADINGS: readonly string[] = ['Commands', 'Channel', 'Hand signals'];
/** Headings under which a district writes its own way in. */
export const WRITTEN_HEADINGS: readonly string[] = ['Litter bridle', 'Tie-in', 'Edge lift'];

const texts: readonly (readonly [heading: string, lines: readonly string[]])[] = [
  [
    'Load',
    [
      'Patient strapped at shoulders, hips, thighs and feet; helmet and eye cover on',
      'Litter rails and floor sound; head uphill, or as the medic says',
      'Bridle: legs even, both gates shut and locked, load spread',
      'Attendants tied in, each short enough to stand; knots dressed',
    ],
  ],
  [
    'Lines',
    [
      'Main: knot dressed and set, line run out and clear',
      'Belay: own line, own knot, own anchor; device loaded the right way',
      'Nothing crosses; no line over a bare edge or under a wheel',
    ],
  ],
  [
    'Edge',
    [
      'Edge protection at every bend of the rope, tied off',
      'Edge attendant and safety tied in; keep-out marked',
      'Edge lift agreed: who lifts where, and the word',
    ],
  ],
  [
    'Haul',
    [
      'Advantage as planned; haul grab and progress capture set and tried',
      'Change of direction in line with its strap; nobody inside the rope’s angle',
      'Hauling end clear to walk; everybody knows the word to stop',
    ],
  ],
  [
    'Anchors',
    [
      'Apparatus: brake set, wheels chocked, pump out of gear, key with the safety',
      'Attachment points as planned; straps even, edges padded',
      'Tree or rock: alive or unmoving, wrapped low, judged by two',
    ],
  ],
  [
    'Commands',
    [
      'Ready?: each answers by place: main, belay, edge, litter',
      'Lower, slow: the litter leads',
      'Up: haul team walks',
      'Set: progress capture takes the load',
      'Reset: haul grab moves toward the load',
      'Stop: anyone, any time; repeated by all',
      'Litter at edge: slow; edge attendant takes the rails',
      'Down, clear: load on the road, off the lines',
    ],
  ],
  ['Litter bridle', ['legs, length, who rigs it']],
  ['Tie-in', ['of patient and attendants: knot, point, length']],
  ['Edge lift', ['hands on the rails, count, last pull by hand']],
];

/** The shipped check card: two people, aloud, from the load to the anchors. Common practice, no source. */
export const defaultCardLines: readonly SheetCardLine[] = texts.flatMap(([heading, lines], i) =>
  lines.map((text, k) => ({ heading, text, order: i * 100 + k })),
);
