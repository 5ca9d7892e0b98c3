import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Browser tests, the longest, before all others, so that the workers end together. Without times of a former run, as in a fresh
 * checkout, the order would be that of file sizes, which say nothing of a page's time.
 */
export class BrowserFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const inBrowser = ({ moduleId }: TestSpecification): boolean => moduleId.includes('/tests/browser/');
    return [...sorted.filter(inBrowser), ...sorted.filter((file) => !inBrowser(file))];
  }
}
