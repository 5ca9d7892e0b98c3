export { draftGround, isAging, type KeptBench, keptBench } from './draft-ground.ts';
export { groundOfSite, type StudyRequest, studySite } from './study-site.ts';
