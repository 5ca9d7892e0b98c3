import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { FolderInMaking } from '../io/node/index.ts';
import { filesOfCall, pageOfCall, workerOfCall } from '../io/publish/index.ts';

const isText = /\.(html|js|css|webmanifest|svg)$/;

/** Copies what the call view needs out of the built app, and has its service worker keep just that. */
export async function copyApp(built: string, policy: string, folder: FolderInMaking): Promise<void> {
  const texts = new Map<string, string | null>();
  for (const path of await readdir(built, { recursive: true })) {
    const name = path.replaceAll('\\', '/');
    if (!/\.\w+$/.test(name) || name.endsWith('.map')) continue;
    texts.set(name, isText.test(name) ? await readFile(join(built, name), 'utf8') : null);
  }
  const revisions: Record<string, string> = {};
  for (const path of filesOfCall(texts)) {
    const bytes =
      path === 'call/index.html'
        ? Buffer.from(pageOfCall(texts.get(path)!, policy))
        : withoutMap(path, await readFile(join(built, path)));
    await folder.write(path, bytes);
    revisions[`/${path}`] = revision(bytes);
  }
  const worker = withoutMap('sw.js', await readFile(join(built, 'sw.js'))).toString();
  const version = revision(Buffer.from(worker + JSON.stringify(revisions)));
  await folder.write('sw.js', workerOfCall(worker, revisions, version));
}

/** Source maps stay behind, so nothing may ask for them. */
const withoutMap = (path: string, bytes: Buffer): Buffer =>
  path.endsWith('.js') ? Buffer.from(bytes.toString().replace(/\n\/\/# sourceMappingURL=\S+\s*$/, '\n')) : bytes;

/** As the build writes it. */
const revision = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex').slice(0, 12);
