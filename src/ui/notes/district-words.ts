import type { DistrictState, GivenState } from '../state/index.ts';

/** What stands at the head: whose district, and whether it is made up. */
export interface DistrictWords {
  readonly name: string;
  readonly invented: 'demo district' | 'district' | null;
}

/**
 * The district on the desk as its book calls it. While another one is being opened its book is there first: what that says is not
 * said of the district that still stands on the desk.
 */
export function districtWords(
  { district, opening }: Pick<DistrictState, 'district' | 'opening'>,
  { districtName, invented }: Pick<GivenState, 'districtName' | 'invented'>,
): DistrictWords {
  const isTold = opening === null;
  return {
    name: (isTold && districtName) || district?.name || 'Brinkbook',
    invented: district?.invented ? 'demo district' : isTold && invented ? 'district' : null,
  };
}
