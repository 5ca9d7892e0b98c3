export { fileStems, rasterStems } from './file-stems.ts';
export { indexPage, withoutWords } from './index-page.ts';
export { filesOfCall, pageOfCall, workerOfCall } from './page-of-call.ts';
export {
  type NotWorkedOut,
  PUBLISHED_META,
  type Publication,
  type PublishedWithout,
  publishedPaths,
  READABLE_BY_ANYONE,
  readPublication,
} from './publication.ts';
export { type AskedToPublish, publishedBook, publishedWithout } from './published-book.ts';
export { publishedRoads } from './published-roads.ts';
export { readPublishedStudy } from './published-study.ts';
