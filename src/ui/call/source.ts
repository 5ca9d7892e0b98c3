import { defaultAngleRule } from '../../book/index.ts';
import type { CallSource } from '../../workers/call/index.ts';
import { demoFiles } from '../demo.ts';

/** Names this build of the program: another may compute otherwise. */
declare const __PROGRAM__: string;

/** The district on this device, and what names its present state: another state is kept anew. Null without a network. */
export async function callSource(): Promise<{ readonly source: CallSource; readonly state: string } | null> {
  try {
    const answer = await fetch('/demo/recipe.sha256', { cache: 'no-cache' });
    if (!answer.ok) return null;
    return { source: demoSource(), state: `${__PROGRAM__} ${(await answer.text()).trim()}` };
  } catch {
    return null;
  }
}

/** The demo district, without asking whether it can be reached: its files may be kept. */
export const demoSource = (): CallSource => ({
  name: 'Tamarrow Fire District',
  invented: true,
  files: demoFiles(),
  posts: new URL('/demo/calibration.json', location.href).href,
  book: null,
  units: 'us',
  rule: defaultAngleRule,
});
