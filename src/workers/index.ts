export { postsOfBook, type RoadPosts } from './call/posts-of-book.ts';
export { connect, type WorkerClient } from './connect.ts';
export type { DistrictFiles, DistrictView, Opener, Origin } from './district.ts';
export { type BookFileRead, type FileFunctions, fileFunctions } from './file-functions.ts';
export { latest } from './latest.ts';
export type { Measured } from './measure.ts';
export type { Port } from './messages.ts';
export type { AlongAsk, PlaceAlong } from './places-along.ts';
export { type RoadsideAsk, type RoadsideLook, roadsideLooks, type StretchInView } from './roadside/index.ts';
export { serve } from './serve.ts';
export { type SideAsked, sideOfAsk } from './side-of-ask.ts';
export {
  type DraftAnswer,
  type StudyAnswer,
  type StudyAsk,
  type StudyFunctions,
  studyFunctions,
} from './study-functions.ts';
export type { TileAddress } from './tiles/index.ts';
export { transferListOf, transferring } from './transfer.ts';
