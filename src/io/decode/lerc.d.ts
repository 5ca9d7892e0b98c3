declare module 'lerc' {
  interface LercImage {
    width: number;
    height: number;
    /** One array per band. */
    pixels: ArrayLike<number>[];
    /** 1 where a cell has data, row-major; absent or null where all have. */
    mask?: Uint8Array | null;
  }
  const Lerc: { decode(input: ArrayBufferLike, options?: { inputOffset?: number }): LercImage };
  export default Lerc;
}
