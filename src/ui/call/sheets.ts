import type { WorkerClient } from '../../workers/index.ts';
import type { SheetFunctions, SheetInputs, SheetSide } from '../../workers/sheet/index.ts';

/** Draws sides of plan sheets away from the page. */
export interface Sheets {
  /** Starts the worker, so that it is there when the plan is. */
  warm(): void;
  draw<S extends SheetSide>(of: SheetInputs, sides: readonly S[]): Promise<Record<S, string>>;
}

/** Its worker is started when a plan is opened, at the latest at the first question. */
export function sheets(): Sheets {
  let started: Promise<WorkerClient<SheetFunctions>> | null = null;
  const client = (): Promise<WorkerClient<SheetFunctions>> => {
    started ??= import('../../workers/web/index.ts').then(({ startSheetWorker }) => startSheetWorker());
    const starting = started;
    // A part that could not be loaded is asked for again.
    starting.catch(() => {
      if (started === starting) started = null;
    });
    return starting;
  };
  return {
    warm: () => void client().catch(() => {}),
    draw: async <S extends SheetSide>(of: SheetInputs, sides: readonly S[]) =>
      (await client()).call('draw', { of, sides }) as Promise<Record<S, string>>,
  };
}
