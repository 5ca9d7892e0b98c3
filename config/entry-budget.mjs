// Fails a build whose pages have grown too heavy for a weak signal: a page's entry and everything that it imports statically.
import { gzipSync } from 'node:zlib';

/** Budgets of the two entries, bytes of gzip: the call view's with its style sheets, the desk's JavaScript before the map. */
export const CALL_BUDGET = 90_000;
export const DESK_BUDGET = 150_000;

const pages = [
  {
    name: 'call view',
    environment: 'call',
    page: /\/call\/index\.html$/,
    most: CALL_BUDGET,
    withStyles: true,
    // What reading a plan must not need: the map, and the merge of books.
    barred: /\/node_modules\/maplibre-gl\/|\/src\/map\/|\/src\/book\/merge\//,
  },
  {
    name: 'desk',
    environment: 'client',
    page: /\/pages\/index\.html$/,
    most: DESK_BUDGET,
    withStyles: false,
    barred: /\/node_modules\/maplibre-gl\/|\/src\/map\//,
  },
];

/** Vite plugin: weighs the entries of the pages. */
export function entryBudget() {
  return {
    name: 'brinkbook-entry-budget',
    apply: 'build',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        for (const { name, environment, page, most, withStyles, barred } of pages) {
          if (environment !== this.environment.name) continue;
          const { chunks, bytes } = weigh(bundle, page, withStyles);
          const heavy = chunks.flatMap(({ moduleIds }) => moduleIds.filter((id) => barred.test(id)));
          if (heavy.length > 0) this.error(`The entry of the ${name} holds ${heavy[0]}; load it when it is asked for.`);
          if (bytes > most) {
            const parts = chunks.map(({ fileName, code }) => `${fileName} ${weight(code)}`);
            this.error(`The entry of the ${name} takes ${bytes} bytes of gzip, over ${most}: ${parts.join(', ')}.`);
          }
          this.info?.(`${name}: ${bytes} of ${most} bytes of gzip`);
        }
      },
    },
  };
}

/** The chunks that a page loads before it shows anything and their bytes, its style sheets counted with them where `withStyles`. */
function weigh(bundle, page, withStyles) {
  const entry = Object.values(bundle).find(
    ({ type, isEntry, facadeModuleId }) => type === 'chunk' && isEntry && page.test(facadeModuleId ?? ''),
  );
  if (!entry) throw new Error(`The build has no page that fits ${page}.`);
  const chunks = [];
  const css = new Set();
  const visit = (chunk) => {
    if (!chunk || chunks.includes(chunk)) return;
    chunks.push(chunk);
    for (const name of chunk.viteMetadata?.importedCss ?? []) css.add(name);
    for (const name of chunk.imports) visit(bundle[name]);
  };
  visit(entry);
  const styles = withStyles ? [...css].flatMap((name) => bundle[name]?.source ?? []) : [];
  const bytes = [...chunks.map(({ code }) => code), ...styles].reduce((sum, text) => sum + weight(text), 0);
  return { chunks, bytes };
}

const weight = (text) => gzipSync(text, { level: 9 }).length;
