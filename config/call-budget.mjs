// Fails a build whose call view has grown too heavy for a weak signal: its entry and everything that it imports statically.
import { gzipSync } from 'node:zlib';

/** The entry's budget, bytes of gzip. */
export const CALL_BUDGET = 90_000;
/** What reading a plan must not need: the map, and the merge of books. */
const barred = /\/node_modules\/maplibre-gl\/|\/src\/map\/|\/src\/book\/merge\//;

/** Vite plugin: weighs the call view's entry. */
export function callBudget() {
  return {
    name: 'brinkbook-call-budget',
    apply: 'build',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const { chunks, bytes } = weigh(bundle);
        const heavy = chunks.flatMap(({ moduleIds }) => moduleIds.filter((id) => barred.test(id)));
        if (heavy.length > 0) this.error(`The call view's entry holds ${heavy[0]}; load it when it is asked for.`);
        if (bytes > CALL_BUDGET) {
          const parts = chunks.map(({ fileName, code }) => `${fileName} ${gzipSync(code, { level: 9 }).length}`);
          this.error(`The call view's entry takes ${bytes} bytes of gzip, over ${CALL_BUDGET}: ${parts.join(', ')}.`);
        }
        this.info?.(`call view: ${bytes} of ${CALL_BUDGET} bytes of gzip`);
      },
    },
  };
}

/** The chunks that the call page loads before it shows anything, its style sheets' bytes counted with them. */
function weigh(bundle) {
  const entry = Object.values(bundle).find(
    ({ type, isEntry, facadeModuleId }) =>
      type === 'chunk' && isEntry && /\/call\/index\.html$/.test(facadeModuleId ?? ''),
  );
  if (!entry) throw new Error('The build has no call/index.html.');
  const chunks = [];
  const css = new Set();
  const visit = (chunk) => {
    if (!chunk || chunks.includes(chunk)) return;
    chunks.push(chunk);
    for (const name of chunk.viteMetadata?.importedCss ?? []) css.add(name);
    for (const name of chunk.imports) visit(bundle[name]);
  };
  visit(entry);
  const weight = (code) => gzipSync(code, { level: 9 }).length;
  const bytes =
    chunks.reduce((sum, { code }) => sum + weight(code), 0) +
    [...css].reduce((sum, name) => sum + (bundle[name] ? weight(bundle[name].source) : 0), 0);
  return { chunks, bytes };
}
