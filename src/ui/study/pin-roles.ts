/** What a spot or a mark can be pinned as, in words. */
export const roleWords = { anchor: 'anchor', turn: 'change of direction', belay: 'belay anchor' } as const;
