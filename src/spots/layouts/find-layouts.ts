import type { LayoutQuestion, Layouts } from './layout-types.ts';

/**
 * The best few complete haul arrangements of a site, by rank: straight, and turned in both directions along the road, over
 * its candidate spots, marked trees and rocks. None on a bench of assumed width or in screening-only data.
 */
export function findLayouts(question: LayoutQuestion): Layouts {
  return { spots: question.spots ?? [], layouts: [], noStraight: 'Not sought.', noTurned: 'Not sought.' };
}
