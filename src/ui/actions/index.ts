export type { DeskWorkers } from './deps.ts';
export { createDesk, type Desk } from './desk.ts';
export type { OwnFiles } from './district-actions.ts';
export { askOf, questionOf } from './question.ts';
export type { NewReading } from './reading-actions.ts';
export type { PinRole } from './spot-actions.ts';
