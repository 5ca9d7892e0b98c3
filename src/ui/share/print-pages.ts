import { type PaperName, printRules } from '../../plan/index.ts';

/** Everything of the screen goes, the pages alone are printed. */
const ONLY_PAGES = `
@media screen { .print-pages { display: none } }
@media print {
  html, body { height: auto !important; margin: 0 !important; padding: 0 !important; overflow: visible !important; background: #fff !important }
  body { display: block !important; position: static !important }
  body > :not(.print-pages) { display: none !important }
}`;

/** Prints pages given as SVG from where the person is; takes them away again once the browser has them. */
export function printPages(pages: readonly string[], paper: PaperName): void {
  const rules = new CSSStyleSheet();
  rules.replaceSync(`${printRules(paper)}${ONLY_PAGES}`);
  const host = document.createElement('div');
  host.className = 'print-pages';
  host.innerHTML = pages.map((svg) => `<section class="page">${svg}</section>`).join('');
  document.body.append(host);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  addEventListener(
    'afterprint',
    () => {
      host.remove();
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== rules);
    },
    { once: true },
  );
  print();
}
