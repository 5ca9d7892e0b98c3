import { spawnSync } from 'node:child_process';

/** True where one of PROJ's programs is installed. Says so when it is not, and fails under CI. */
export function hasProj(program: 'cs2cs' | 'geod', what: string): boolean {
  const found = spawnSync(program, [], { encoding: 'utf8' }).error === undefined;
  if (!found) {
    if (process.env.CI === 'true')
      throw new Error(`${program} (proj-bin) was not found, and CI must not skip its checks.`);
    console.warn(`${program} (proj-bin) was not found: ${what} is not checked.`);
  }
  return found;
}
