import { DOMParser, type Document, onErrorStopParsing } from '@xmldom/xmldom';
import { UserError } from '../../units/index.ts';

/** Deepest nesting that is read; GPX and KML need about ten. */
const DEEPEST = 100;

/**
 * A document from XML text, in a worker or in Node too. Document types and entities are refused before parsing, nesting is
 * bounded, and the first error stops: a cut file is never read as a shorter one. Throws a `UserError`.
 */
export function parseXml(text: string, file: string): Document {
  const refuse = (why: string): UserError =>
    new UserError('xml', `${file} ${why}; export it again as plain GPX or KML.`);
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) throw refuse('declares a document type, which may hide other content');
  if (depthOf(text) > DEEPEST) throw refuse(`is nested more than ${DEEPEST} deep`);
  try {
    const document = new DOMParser({ onError: onErrorStopParsing }).parseFromString(
      text.replace(/^\uFEFF/, ''),
      'text/xml',
    );
    if (document.documentElement) return document;
  } catch {
    throw refuse('is not well-formed XML');
  }
  throw refuse('holds no XML element');
}

/** Deepest nesting of tags, an upper bound: comments and quoted brackets count as well. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const [tag] of text.matchAll(/<\/?[A-Za-z_][^<>]*>/g)) {
    if (tag.endsWith('/>')) continue;
    depth += tag[1] === '/' ? -1 : 1;
    deepest = Math.max(deepest, depth);
  }
  return deepest;
}
