export { studySentence } from './sentence.ts';
export { CAUTION, STOP_LINE } from './stop-line.ts';
