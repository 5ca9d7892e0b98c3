import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Folders in the order of what their longest file takes. */
const LONGEST_FIRST = ['/tests/browser/', '/tests/spots/', '/tests/study/', '/tests/book/merge/', '/tests/outside/'];

/**
 * Browser tests, the longest, before all others, then those that search for seconds, so that the workers end together. Without times of
 * a former run, as in a fresh checkout, the order would be that of file sizes, which say nothing of a test's time.
 */
export class BrowserFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = LONGEST_FIRST.findIndex((folder) => moduleId.includes(folder));
      return at < 0 ? LONGEST_FIRST.length : at;
    };
    return sorted.sort((a, b) => rank(a) - rank(b));
  }
}
