import { UserError } from '../../units/index.ts';
import { PUBLISHED_META, publishedPaths } from './publication.ts';

/**
 * The call page of a published folder: the built page, told where its publication lies and under a content security policy of its
 * own, since a plain host sends none. Throws `UserError` where the built page is not as expected.
 */
export function pageOfCall(built: string, policy: string): string {
  const head = '<meta charset="utf-8" />';
  if (!built.includes(head)) throw otherBuild();
  return built.replace(
    head,
    `${head}
    <meta http-equiv="Content-Security-Policy" content="${policy}" />
    <meta name="referrer" content="no-referrer" />
    <meta name="robots" content="noindex" />
    <meta name="${PUBLISHED_META}" content="../${publishedPaths.publication}" />`,
  );
}

/** The list of files in the built service worker, and the version that it makes itself known by. */
const LIST = /\{(?:"\/[^"\\]+":"[0-9a-f]{12}",?)+\}/;
const VERSION = /([`'"])[0-9a-f]{12}\1/;

/** The built service worker with another list of files, path → revision, and a version made from it. Throws `UserError` for another build. */
export function workerOfCall(built: string, files: Readonly<Record<string, string>>, version: string): string {
  if (!LIST.test(built) || !VERSION.test(built.replace(LIST, ''))) throw otherBuild();
  const [before, after] = built.split(LIST) as [string, string];
  const versioned = (code: string): string => code.replace(VERSION, (found, quote) => quote + version + found[0]);
  return `${versioned(before)}${JSON.stringify(files)}${versioned(after)}`;
}

/**
 * The files of the built app that the call page needs: those that the page names, and those that these name. `built` are all
 * paths below the app's folder with their texts, null for files that are no text.
 */
export function filesOfCall(built: ReadonlyMap<string, string | null>): string[] {
  const wanted = new Set(['call/index.html']);
  for (const path of wanted) {
    const text = built.get(path);
    if (text === undefined) throw otherBuild();
    if (text === null) continue;
    for (const other of built.keys()) {
      const last = other.split('/').at(-1)!;
      // Pages and the desk's manifest are reached by people; everything else has a name of its own.
      if (!wanted.has(other) && !/\.(html|map)$|^sw\.js$|^app\.webmanifest$/.test(other) && text.includes(last))
        wanted.add(other);
    }
  }
  return [...wanted].sort();
}

const otherBuild = (): UserError =>
  new UserError('build', 'The built app is not of this version of the program; build it again with "npm run build".');
