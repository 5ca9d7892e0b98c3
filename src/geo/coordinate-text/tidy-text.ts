/** The longest text that is searched, characters. A dispatch message has a few hundred; longer texts are refused. */
export const LONGEST_TEXT = 20_000;

/**
 * A text with one character for each meaning: capital letters, ° ' " for the marks, - for every dash, plain spaces, no
 * invisible or direction-changing characters, hyphens and stray commas inside degrees-minutes-seconds taken away.
 */
export function tidyText(text: string): string {
  return text
    .replace(/%(2C|20|22|27|3B|C2%B0)/gi, (code) => percent[code.toUpperCase()]!)
    .replace(/&deg;|Â°|[º˚⁰∘◦○ᵒ]/gi, '°')
    .replace(/&[rl]squo;|&prime;|&apos;|&#39;/gi, "'")
    .replace(/&quot;|&Prime;|[″”“ʺ˝〃＂]/g, '"')
    .replace(/[′’‘ʹʼ´`＇]/g, "'")
    .replace(/''/g, '"')
    .normalize('NFKC')
    .replace(/[\u00AD\u200B-\u200F\u202A-\u202E\u2060-\u206F\uFEFF]/g, '')
    .replace(/[−–—‐‑‒―]/g, '-')
    .replace(/[^\S\n]+/g, ' ')
    .toUpperCase()
    .replace(/(?<!CRS=)\b(WGS ?-?84|NAD ?-?83|EPSG:4326)\b/g, ' ')
    .replace(HYPHENS_BEFORE_LETTER, '$1 $2 $3 $4')
    .replace(HYPHENS_AFTER_LETTER, '$1 $2 $3 $4')
    .replace(/(\d), ?([NS]) ?,/g, '$1 $2, ')
    .replace(/(\d), ?([EW])(?= ?(?:,|$|[^\dA-Z°' .-]))/g, '$1 $2');
}

const percent: Readonly<Record<string, string>> = {
  '%2C': ',',
  '%20': ' ',
  '%22': '"',
  '%27': "'",
  '%3B': ';',
  '%C2%B0': '°',
};

/** 44-00-44.5N and N44-00-44.5, also without seconds: hyphens between the parts of one number. */
const HYPHENS_BEFORE_LETTER = /(?<![\d.-])(\d{1,3})-(\d{1,2}(?:\.\d+)?)(?:-(\d{1,2}(?:\.\d+)?))? ?([NSEW])(?![A-Z])/g;
const HYPHENS_AFTER_LETTER = /(?<![A-Z])([NSEW]) ?(\d{1,3})-(\d{1,2}(?:\.\d+)?)(?:-(\d{1,2}(?:\.\d+)?))?(?![\d-])/g;

/**
 * The same tidy text with decimal commas made points, or null where its commas are no decimal commas: there are none between
 * digits, or points already stand before decimals.
 */
export function withDecimalPoints(tidy: string): string | null {
  if (!/\d,\d/.test(tidy) || /\d\.\d{2,}/.test(tidy)) return null;
  return tidy.replace(/(\d),(\d+)/g, '$1.$2');
}
