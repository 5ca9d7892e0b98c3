/**
 * The most that each part of a book file may unpack to, bytes. They are judgement: a book of 10,000 sites with 100,000 edits
 * has a log of about 25 MB, a shrunk photo about 0.3 MB.
 */
export const limits = {
  manifest: 8e6,
  snapshot: 256e6,
  log: 512e6,
  photo: 50e6,
  /** All entries together. */
  total: 2e9,
  /** Number of photos. */
  photos: 20_000,
} as const;
