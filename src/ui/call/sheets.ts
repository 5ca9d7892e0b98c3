import { UserError } from '../../units/index.ts';
import type { WorkerClient } from '../../workers/index.ts';
import type { SheetFunctions, SheetInputs, SheetSide } from '../../workers/sheet/index.ts';

/** Draws sides of plan sheets away from the page. */
export interface Sheets {
  /** Starts the worker, so that it is there when the plan is. */
  warm(): void;
  draw<S extends SheetSide>(of: SheetInputs, sides: readonly S[]): Promise<Record<S, string>>;
}

type Start = () => Promise<WorkerClient<SheetFunctions>>;

const startInBrowser: Start = async () => (await import('../../workers/web/index.ts')).startSheetWorker();

/** Its worker is started when a plan is opened, at the latest at the first question. */
export function sheets(start: Start = startInBrowser): Sheets {
  let started: Promise<WorkerClient<SheetFunctions>> | null = null;
  const client = (): Promise<WorkerClient<SheetFunctions>> => {
    started ??= start();
    const starting = started;
    // A part that could not be loaded is asked for again.
    starting.catch(() => {
      if (started === starting) started = null;
    });
    return starting;
  };
  return {
    warm: () => void client().catch(() => {}),
    draw: async <S extends SheetSide>(of: SheetInputs, sides: readonly S[]) => {
      const asked = await client();
      try {
        return (await asked.call('draw', { of, sides })) as Record<S, string>;
      } catch (error) {
        // A worker that is lost stays lost: the next question starts another.
        if (error instanceof UserError && error.code === 'worker-lost') started = null;
        throw error;
      }
    },
  };
}
