/** The leaves of the book, in the order of its contents. */
export const leaves = [
  { name: 'kit', words: 'Kit', group: 'What we have' },
  { name: 'fleet', words: 'Fleet', group: 'What we have' },
  { name: 'stations', words: 'Stations and arrivals', group: 'What we have' },
  { name: 'response', words: 'Response table', group: 'How we work' },
  { name: 'rules', words: 'Rules and policy', group: 'How we work' },
  { name: 'card', words: 'Check card', group: 'How we work' },
  { name: 'markers', words: 'Mile markers', group: 'The ground' },
  { name: 'events', words: 'Events', group: 'The ground' },
  { name: 'photos', words: 'Photos', group: 'The ground' },
  { name: 'conflicts', words: 'To decide', group: 'The book itself' },
  { name: 'history', words: 'History and deleted', group: 'The book itself' },
  { name: 'import', words: 'Bring in', group: 'The book itself' },
  { name: 'export', words: 'Give out', group: 'The book itself' },
  { name: 'keeping', words: 'Where it is kept', group: 'The book itself' },
] as const;

export type LeafName = (typeof leaves)[number]['name'];

/** The leaf of a name as the address bar has it; the first where it names none. */
export const leafNamed = (name: string | undefined): LeafName =>
  leaves.find((leaf) => leaf.name === name)?.name ?? leaves[0].name;
