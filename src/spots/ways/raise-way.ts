import type { RaiseOption, Way } from './way-types.ts';

/** Raising to the road by the best layout. */
export function raiseWay({ ropeM, ropeReaches, people, minutes }: RaiseOption): Way {
  return {
    kind: 'raise',
    ropeM,
    people,
    minutes: minutes.total,
    shown: minutes.shown,
    meets: 'the ambulance on the road above',
    bearers: null,
    endsAtVehicle: true,
    allowed: ropeReaches && minutes.total !== null,
    why: [
      'Raised by the first layout.',
      ...(ropeReaches ? [] : ['No rope that comes reaches without a join.']),
      ...(people.atMin === null ? ['Too few people come to raise.'] : []),
    ],
  };
}
