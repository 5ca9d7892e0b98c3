/**
 * The pens of the light page as presentation attributes, so that a drawing stands alone in a file; a screen's style sheet
 * may override them by class.
 */
export const paper = '#fbf8f1';
const ink = '#1d2a35';
const ink2 = '#4a5560';
const accent = '#b4451f';
const water = '#3b6f8f';
const figures = '"Avenir Next","Segoe UI","Helvetica Neue",Roboto,"Liberation Sans",Arial,sans-serif';
const words = 'Charter,"Bitstream Charter","Iowan Old Style",Cambria,"Noto Serif","Liberation Serif",serif';

const line = (stroke: string, width: number, dash?: string) =>
  ({
    fill: 'none',
    stroke,
    'stroke-width': width,
    'stroke-linejoin': 'round',
    'stroke-linecap': 'round',
    ...(dash ? { 'stroke-dasharray': dash } : {}),
  }) as const;

const lettering = (fill: string, size: number, family = figures) =>
  ({
    fill,
    'font-size': size,
    'font-family': family,
    'font-variant-numeric': 'lining-nums tabular-nums',
    // A halo of paper keeps letters readable where they cross a line.
    stroke: paper,
    'stroke-width': 3,
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  }) as const;

export const pens = {
  ground: { class: 'ground', ...line(ink, 2.6) },
  groundUndecided: { class: 'ground undecided-line', ...line(ink, 2.6, '9 4') },
  earth: { class: 'earth', ...line(ink, 0.5) },
  rope: { class: 'rope main', ...line(accent, 2.4) },
  ray: { class: 'ray', ...line(ink, 0.7, '10 4') },
  levelRay: { class: 'ray zero', ...line(ink, 0.5, '2 3') },
  arc: { class: 'arc', ...line(ink, 0.7) },
  fineRay: { class: 'ray2', ...line(ink, 0.9, '5 2.5') },
  range: { class: 'rngband', ...line(ink, 3.4), 'stroke-linecap': 'butt' },
  stretch: { class: 'governing', ...line(ink, 5), 'stroke-linecap': 'butt' },
  sight: { class: 'sight', ...line(ink2, 0.7, '1.5 2.6') },
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
  stop: { class: 'lab stop', ...lettering(accent, 12), 'font-weight': 600 },
} as const;
