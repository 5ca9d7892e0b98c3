import MiniSearch from 'minisearch';
import type { CallSite } from '../../../io/offline/index.ts';
import { wordsOf } from './words.ts';

/** Sites by what somebody types of their names. */
export interface SiteIndex {
  /** At most `most` sites, best first: every word counts, begun or slightly wrong; some words only where not all fit one site. */
  find(query: string, most?: number): CallSite[];
}

/** Words this short must be right, letters. */
const EXACT_LETTERS = 3;

/** Indexes the sites' names, and their roads with less weight. */
export function siteIndex(sites: readonly CallSite[]): SiteIndex {
  const index = new MiniSearch<{ id: number; name: string; road: string }>({
    fields: ['name', 'road'],
    tokenize: wordsOf,
    processTerm: (term) => term,
    searchOptions: {
      boost: { name: 3 },
      prefix: true,
      fuzzy: (term) => (term.length > EXACT_LETTERS ? 0.25 : false),
    },
  });
  index.addAll(sites.map(({ name, road }, id) => ({ id, name, road: road ?? '' })));
  return {
    find(query, most = 8) {
      if (wordsOf(query).length === 0) return [];
      const all = index.search(query, { combineWith: 'AND' });
      const found = all.length > 0 ? all : index.search(query, { combineWith: 'OR' });
      return found.slice(0, most).map(({ id }) => sites[id as number]!);
    },
  };
}
