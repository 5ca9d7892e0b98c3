import { type ChildProcess, spawn } from 'node:child_process';

/** The repository: npm and vitest start there, bundled or not. */
export const root = process.cwd();

export interface RunningApp {
  readonly url: string;
  /** Stops it as Ctrl-C does; resolves to its exit code. */
  stop(): Promise<number | null>;
}

/** Starts the app as `npm start` does, on a free port, building it when it is older than its sources. */
export async function startApp(): Promise<RunningApp> {
  const app = spawn(process.execPath, ['config/start.mjs'], {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production', PORT: '0' },
  });
  const url = await addressOf(app);
  return {
    url,
    stop: () =>
      new Promise((resolve) => {
        app.once('exit', resolve);
        app.kill('SIGINT');
      }),
  };
}

/** The address that the app prints once it listens; rejects with what it said if it ends before. */
function addressOf(app: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (bytes: Buffer): void => {
      said += bytes;
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
      if (found) resolve(found[0]);
    };
    app.stdout?.on('data', hear);
    app.stderr?.on('data', hear);
    app.once('exit', () => reject(new Error(`The app did not start: ${said}`)));
  });
}
