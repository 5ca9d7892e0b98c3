import type { Palette } from './palette.ts';

const screenFigures = '"Avenir Next","Segoe UI","Helvetica Neue",Roboto,"Liberation Sans",Arial,sans-serif';
const screenWords = 'Charter,"Bitstream Charter","Iowan Old Style",Cambria,"Noto Serif","Liberation Serif",serif';

const line = (stroke: string, width: number, dash?: string) =>
  ({
    fill: 'none',
    stroke,
    'stroke-width': width,
    'stroke-linejoin': 'round',
    'stroke-linecap': 'round',
    ...(dash ? { 'stroke-dasharray': dash } : {}),
  }) as const;

/** Font stacks of running words and of figures. */
export interface Faces {
  readonly words: string;
  readonly figures: string;
}

export type Pens = ReturnType<typeof makePens>;

/**
 * The pens of a page as presentation attributes, so that a drawing stands alone in a file; a screen's style sheet may
 * override them by class.
 */
export function makePens(
  { paper, ink, ink2, rule, accent, water, assumed }: Palette,
  { words, figures }: Faces = { words: screenWords, figures: screenFigures },
) {
  const plain = (fill: string, size: number, family: string = figures) =>
    ({
      fill,
      'font-size': size,
      'font-family': family,
      'font-variant-numeric': 'lining-nums tabular-nums',
    }) as const;
  const lettering = (fill: string, size: number, family?: string) =>
    ({
      ...plain(fill, size, family),
      // A halo of paper keeps letters readable where they cross a line.
      stroke: paper,
      'stroke-width': 3,
      'stroke-linejoin': 'round',
      'paint-order': 'stroke',
    }) as const;
  return {
    paper: { class: 'sheetground', fill: paper },
    neatLine: { class: 'neat', ...line(ink, 0.8) },
    rule: { class: 'rule', ...line(rule, 1) },
    ground: { class: 'ground', ...line(ink, 2.6) },
    groundUndecided: { class: 'ground undecided-line', ...line(ink, 2.6, '9 4') },
    earth: { class: 'earth', ...line(ink, 0.5) },
    rope: { class: 'rope main', ...line(accent, 2.4) },
    belay: { class: 'rope belay', ...line(accent, 1.1, '9 3 1.5 3') },
    strap: { class: 'rope strap', ...line(accent, 3.6) },
    handLine: { class: 'rope hand', ...line(accent, 1.1, '3 2.5') },
    ropeForTeam: { class: 'rope main for-team', ...line(ink, 1.4, '7 4') },
    otherLine: { class: 'other-line', ...line(ink2, 0.95, '4.5 2.8') },
    apparatus: { class: 'apparatus', fill: paper, stroke: ink, 'stroke-width': 1.6, 'stroke-linejoin': 'round' },
    apparatusForTeam: {
      class: 'apparatus for-team',
      fill: paper,
      stroke: ink,
      'stroke-width': 1.3,
      'stroke-dasharray': '5 3',
    },
    apparatusOther: { class: 'apparatus-other', ...line(ink2, 0.95, '4.5 2.8') },
    cab: { class: 'cab', ...line(ink, 1.1) },
    wheel: { class: 'wheel', ...line(ink, 2.6), 'stroke-linecap': 'butt' },
    edgeDrop: { class: 'edge drop', ...line(ink, 1.5) },
    edgeTaped: { class: 'edge drop taped', ...line(ink, 2.8) },
    edgeAssumed: { class: 'edge drop assumed', ...line(assumed, 1.5, '2 3') },
    edgeToe: { class: 'edge toe', ...line(ink, 1.1) },
    edgeNone: { class: 'edge none', ...line(ink, 1, '5 4') },
    hachure: { class: 'hachure', ...line(ink, 0.75) },
    usable: { class: 'usable', ...line(ink2, 0.6) },
    lane: { class: 'lane', ...line(ink2, 0.7) },
    laneMiddle: { class: 'lane middle', ...line(ink2, 0.7, '8 6') },
    laneHatch: { class: 'lane-hatch', ...line(ink, 0.45) },
    keepOut: { class: 'keep-out', ...line(accent, 1, '5 3') },
    keepOutGround: { class: 'keep-out-ground', fill: paper },
    keepOutHatch: { class: 'keep-out-hatch', ...line(accent, 0.6) },
    keepOutFall: { class: 'keep-out-fall', ...line(accent, 0.4) },
    bar: { class: 'pull-bar', ...line(ink, 4), 'stroke-linecap': 'butt' },
    barChosen: { class: 'pull-bar chosen', ...line(accent, 4), 'stroke-linecap': 'butt' },
    tick: { class: 'reset-tick', ...line(ink, 1.4), 'stroke-linecap': 'butt' },
    markLine: { class: 'mark-line', ...line(ink, 1.3) },
    markFine: { class: 'mark-fine', ...line(ink, 0.9) },
    markDash: { class: 'mark-dash', ...line(ink, 1.3, '3 2') },
    ray: { class: 'ray', ...line(ink, 0.7, '10 4') },
    levelRay: { class: 'ray zero', ...line(ink, 0.5, '2 3') },
    contour: { class: 'contour', ...line(rule, 0.5) },
    contourIndex: { class: 'contour index', ...line(ink2, 0.7) },
    fanSector: { class: 'fan-sector', ...line(ink, 0.4) },
    arc: { class: 'arc', ...line(ink, 0.7) },
    fineRay: { class: 'ray2', ...line(ink, 0.9, '5 2.5') },
    range: { class: 'rngband', ...line(ink, 3.4), 'stroke-linecap': 'butt' },
    stretch: { class: 'governing', ...line(ink, 5), 'stroke-linecap': 'butt' },
    dimension: { class: 'dimline', ...line(ink, 0.6) },
    leader: { class: 'leader', ...line(ink, 0.55) },
    project: { class: 'project', ...line(ink2, 0.55, '1.5 3') },
    contact: { class: 'contact', fill: paper, stroke: ink, 'stroke-width': 1.2 },
    solid: { class: 'solid', fill: ink },
    hollow: { class: 'hollow', fill: paper, stroke: ink, 'stroke-width': 0.8 },
    figure: { class: 'figure', ...line(ink, 1.3) },
    accentFill: { class: 'accent-fill', fill: accent },
    waterLine: { class: 'water-line', ...line(water, 1.6) },
    label: { class: 'lab', ...lettering(ink, 12) },
    strong: { class: 'lab strong', ...lettering(ink, 12), 'font-weight': 600 },
    small: { class: 'lab-s', ...lettering(ink, 11) },
    note: { class: 'lab-n', ...lettering(ink2, 11) },
    word: { class: 'lab-w', ...lettering(ink, 13, words), 'font-style': 'italic' },
    waterWord: { class: 'lab-w water', ...lettering(water, 13, words), 'font-style': 'italic' },
    assumedLabel: { class: 'lab assumed', ...lettering(assumed, 12, words), 'font-style': 'italic' },
    stop: { class: 'lab stop', ...lettering(accent, 12), 'font-weight': 600 },
    accentLabel: { class: 'lab accent', ...lettering(accent, 12) },
    heading: { class: 'heading', ...plain(ink, 15, words), 'font-style': 'italic' },
    sentence: { class: 'sentence', ...plain(ink, 19, words) },
    opening: { class: 'opening', fill: accent, 'font-weight': 600 },
    siteLine: { class: 'site-line', ...plain(ink, 14, words) },
    body: { class: 'body', ...plain(ink, 12) },
    bodyStrong: { class: 'body strong', ...plain(ink, 13), 'font-weight': 600 },
    fine: { class: 'fine-print', ...plain(ink2, 12, words) },
    assumed: { class: 'assumed', ...plain(assumed, 12, words), 'font-style': 'italic' },
    severity: { class: 'severity', ...plain(accent, 13, words), 'font-style': 'italic' },
    stopLine: { class: 'stop-line', ...plain(paper, 18, words), 'font-weight': 600 },
  } as const;
}
