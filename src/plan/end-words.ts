import type { DescentEndReason } from '../study/index.ts';

/** Why a descent ends where it does, in words for its end. */
export const endWords: Readonly<Record<DescentEndReason, string>> = {
  'patient point': 'patient point',
  'ground levels': 'ground levels',
  water: 'water',
  road: 'road below',
  limit: 'descent goes on, limit reached',
  'fall line bends': 'fall line bends, ground goes on',
  'no data': 'no elevation data beyond',
};
