export { connect, type WorkerClient } from './connect.ts';
export type { DistrictFiles, DistrictView, Opener } from './district.ts';
export { latest } from './latest.ts';
export type { Port } from './messages.ts';
export { type RoadsideAsk, type RoadsideLook, roadsideLooks, type StretchInView } from './roadside/index.ts';
export { serve } from './serve.ts';
export { type StudyAnswer, type StudyAsk, type StudyFunctions, studyFunctions } from './study-functions.ts';
export type { TileAddress } from './tiles/index.ts';
export { transferListOf, transferring } from './transfer.ts';
