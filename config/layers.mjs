// The reading order and the dependency order of src/: an import may only point up this table, and to the libraries
// named below it. The dependency check and the DOM-free compilation are both made from it.

/** Folder name → the folders it may import; 'above' means every folder listed before it. */
const table = [
  ['units', []],
  ['geo', 'above'],
  ['book', 'above'],
  ['terrain', ['units', 'geo']],
  ['road', ['units', 'geo', 'book', 'terrain']],
  ['descent', ['units', 'geo', 'book', 'terrain', 'road']],
  ['rigging', ['units']],
  ['spots', ['units', 'geo', 'book', 'terrain', 'road', 'descent', 'rigging']],
  ['access', ['units', 'geo', 'book', 'terrain', 'road']],
  ['study', 'above'],
  ['sweep', 'above'],
  ['priority', 'above'],
  ['plan', 'above'],
  ['io', 'above'],
  ['workers', 'above'],
  ['map', 'above'],
  ['ui', 'above'],
  ['cli', 'above-but-map-ui'],
  ['pages', ['ui']],
];

const names = table.map(([dir]) => dir);

function allowed(rule, i) {
  if (rule === 'above') return names.slice(0, i);
  if (rule === 'above-but-map-ui') return names.slice(0, i).filter((dir) => dir !== 'map' && dir !== 'ui');
  return rule;
}

export const layers = table.map(([dir, rule], i) => ({ dir, may: allowed(rule, i) }));

/** Folders whose code must run without a DOM, network, storage, clock or console. */
export const computing = names.slice(0, names.indexOf('plan') + 1);

/** Library pattern → the only places in src/ that may import it. */
export const libraries = {
  '^geotiff$': ['io'],
  '^maplibre-gl(/|$)': ['map'],
  '^(react|react-dom|zustand)(/|$)': ['ui'],
  '^preact(/|$)': ['ui/call'],
  '^proj4$': ['geo'],
};

/** The only places in src/ that may import Node's own modules. */
export const nodeBuiltins = ['io/node', 'workers/node', 'cli'];

/** The only places in src/ that may start a worker. */
export const workerStarts = ['workers/web', 'workers/node'];
