/** Records of the book in the shape of the computation, or the shipped ones where the book holds none. */
export interface Given<T> {
  readonly value: T;
  readonly shipped: boolean;
}

export const given = <T>(own: readonly T[], shipped: readonly T[]): Given<readonly T[]> =>
  own.length > 0 ? { value: own, shipped: false } : { value: shipped, shipped: true };
