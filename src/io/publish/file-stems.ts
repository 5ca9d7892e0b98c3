/** Names that some systems keep for devices, whatever ending follows. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/;
/** What every host and disk serves unchanged, whether it tells capitals apart or not. */
const plain = /^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/;

/**
 * A file name's stem for each id: the id itself where it is short, small letters, digits and dashes, else "site-1", "site-2" … in the
 * order given. No two are the same, also where capitals are not told apart.
 */
export function fileStems(ids: readonly string[]): Record<string, string> {
  const kept = new Set(ids.filter((id) => plain.test(id) && !reserved.test(id) && id !== 'all-sheets'));
  const stems: [string, string][] = [];
  let n = 0;
  for (const id of ids) {
    let stem = id;
    if (!kept.has(id))
      do stem = `site-${++n}`;
      while (kept.has(stem));
    stems.push([id, stem]);
  }
  return Object.fromEntries(stems);
}

/** Stems for rasters, out of their files' names: letters, digits, dashes and underscores alone, numbered where two are the same. */
export function rasterStems(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const last = name.split(/[\\/]/).at(-1)!.split(/[?#]/)[0]!.toLowerCase();
    const bare = last
      .replace(/\.tiff?$/, '')
      .replace(/[^a-z0-9_]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 48);
    const base = bare === '' || reserved.test(bare) ? 'ground' : bare;
    let stem = base;
    for (let n = 2; taken.has(stem); n++) stem = `${base}-${n}`;
    taken.add(stem);
    return stem;
  });
}
