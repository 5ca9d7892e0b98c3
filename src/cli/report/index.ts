export { studyReport } from './study-report.ts';
