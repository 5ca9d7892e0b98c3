/** Characters that turn the direction of text or cannot be seen: they can make a name read as another. */
const TRICKS = /[\u061C\u200B-\u200F\u202A-\u202E\u2060-\u206F\uFEFF]/g;

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
const CONTROLS = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\uFFFE\uFFFF]/g;

const withoutTricks = (text: string): string => text.replace(TRICKS, '').replace(CONTROLS, '');

/** JSON whose texts do nothing wherever the file is pasted; every character is kept, troublesome ones as \u escapes. */
export const inertJson = (value: unknown, indent = 1): string =>
  JSON.stringify(value, null, indent).replace(
    /[<>&\u007F-\u009F\u061C\u200B-\u200F\u2028-\u202E\u2060-\u206F\uFEFF]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/**
 * Text for an XML element or attribute. Programs that show GPX and KML take some texts for HTML after decoding them, so angle
 * brackets become ‹ ›.
 */
export const inertXml = (text: string): string =>
  withoutTricks(text).replace(/[&<>"']/g, (character) => xml[character]!);

const xml: Readonly<Record<string, string>> = { '&': '&amp;', '<': '‹', '>': '›', '"': '&quot;', "'": '&#39;' };

/** Text for HTML, between tags or inside a quoted attribute. */
export const inertHtml = (text: string): string =>
  withoutTricks(text).replace(/[&<>"']/g, (character) => html[character]!);

const html: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/**
 * Text for a CSV cell: what a spreadsheet would take for a formula gets an apostrophe before it, at the beginning and after what
 * some spreadsheets take for the end of a cell [source: csv-injection]. An apostrophe that already stands there gets another one,
 * so that reading can take one away. Space at the beginning is taken out.
 */
export const inertCell = (text: string): string => withoutTricks(text).trimStart().replace(FORMULA, "$1'$2");

/** The text that `inertCell` was given, less the characters that it takes out. */
export const cellText = (cell: string): string => cell.replace(GUARDED, '$1$2');

const FORMULA = /(^|[;|"\t\r\n] {0,4})('*[=+\-@＝＋－＠%|])/g;
const GUARDED = /(^|[;|"\t\r\n] {0,4})'('*[=+\-@＝＋－＠%|])/g;
