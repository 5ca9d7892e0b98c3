export * from './call-plan.ts';
export * from './hold.ts';
export * from './mini-profile.tsx';
export type { NextWords } from './next.ts';
