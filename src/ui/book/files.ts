import type { FileFunctions, WorkerClient } from '../../workers/index.ts';
import { startFilesWorker } from '../../workers/web/index.ts';

let started: WorkerClient<FileFunctions> | null = null;

/** The worker that reads and writes whole files, started when it is first needed. */
export function files(): WorkerClient<FileFunctions> {
  started ??= startFilesWorker();
  return started;
}

/** Today by this device's clock, YYYY-MM-DD. */
export function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
