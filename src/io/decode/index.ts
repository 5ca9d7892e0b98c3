export * from './block-format.ts';
export * from './decode-block.ts';
export * from './decode-here.ts';
export { needsDoubles } from './heights.ts';
export { unpackLzw } from './lzw.ts';
export { undoFloatPrediction } from './predictor.ts';
export { checkCompression, LERC, unpackDeflateWith } from './unpack.ts';
