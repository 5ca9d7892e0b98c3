import type { CrashRecord } from '../../book/index.ts';

type Severity = CrashRecord['severity'];

/** How the words of one file are taken. */
export interface SeverityWords {
  of(text: string): Severity;
  readonly remarks: readonly string[];
}

/** Words of crash records and the scale's letters [source: kabco]; which words agencies use is common practice, no source. */
const words: readonly (readonly [RegExp, Severity])[] = [
  [/^k$|(?<!non-? ?)fatal|kill|death|died/, 'killed'],
  [/^(?:o|pdo)$|property|no (?:apparent )?injur|not injured|uninjured|damage only|non-?injury/, 'property damage'],
  [/^a$|serious|severe|incapacitating(?<!non-?incapacitating)|major/, 'serious'],
  [/^b$|minor|slight|non-?incapacitating|evident|moderate|visible/, 'minor'],
  [/^c$|possible|complain/, 'possible'],
];

/**
 * How to take the severities of a file. A bare "injury" is minor where the file has another word for serious injuries, else
 * serious: missing words never make a road look milder. Words that are not known are "unknown" and told.
 */
export function readSeverity(texts: readonly string[]): SeverityWords {
  const hasSerious = texts.some((text) => known(text) === 'serious');
  const unknown = new Set<string>();
  let bare = 0;
  for (const text of texts) {
    if (isBareInjury(text)) bare++;
    else if (known(text) === null && text !== '') unknown.add(text.slice(0, 40));
  }
  const taken: Severity = hasSerious ? 'minor' : 'serious';
  const remarks = [
    bare > 0 ? `${bare} rows say only that somebody was injured; taken as ${taken}.` : null,
    unknown.size > 0 ? `Severities not known: ${[...unknown].slice(0, 8).join(', ')}; taken as unknown.` : null,
  ];
  return {
    of: (text) => (isBareInjury(text) ? taken : (known(text) ?? 'unknown')),
    remarks: remarks.filter((remark): remark is string => remark !== null),
  };
}

const known = (text: string): Severity | null =>
  words.find(([pattern]) => pattern.test(text.trim().toLowerCase()))?.[1] ?? null;

const isBareInjury = (text: string): boolean =>
  /^(?:(?:non-? ?fatal )?injur(?:y|ies|ed)|injury crash)$/.test(text.trim().toLowerCase());
