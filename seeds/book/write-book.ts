import type { KeyRoad } from '../key/write-key.ts';

export async function writeBook(_folder: string, _key: readonly KeyRoad[]): Promise<void> {}
