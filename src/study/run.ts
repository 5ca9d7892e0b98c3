import { ok, type Result } from '../units/index.ts';
import { completeStudy } from './complete-study.ts';
import { workUpGround } from './ground-work.ts';
import type { StudyInputs } from './inputs.ts';
import type { Study } from './study.ts';

/** Works out one site. Refuses where no road lies within 50 m or the ground has no data at the road. */
export function runStudy(inputs: StudyInputs): Result<Study> {
  const work = workUpGround(inputs);
  return work.ok ? ok(completeStudy(work.value, inputs)) : work;
}
