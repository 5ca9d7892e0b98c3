import { UserError } from '../units/index.ts';
import { UsageError } from './arguments.ts';
import { bookCommand, bookHelp } from './book-command.ts';
import type { BuiltApp } from './built-app.ts';
import { planCommand, planHelp } from './plan-command.ts';
import { publishCommand, publishHelp } from './publish-command.ts';
import { studyCommand, studyHelp } from './study-command.ts';

const help = `Brinkbook, from a terminal.

  npm run -s brinkbook -- <command> [options]

Commands
  book     check, merge and export books
  plan     the plan sheet of a site of a book, or a book of sheets, to print or to send
  publish  a folder of static files for any web host: plan sheets and the call view of a book, read-only
  study    the workup of one roadside place: edge, descent, angle class, rope line

Every command takes --help. Exit 0 on success, 1 on bad input, 2 on wrong usage.
`;

const commands: Record<string, { run(args: string[], app: BuiltApp): Promise<void>; help: string }> = {
  book: { run: bookCommand, help: bookHelp },
  plan: { run: planCommand, help: planHelp },
  publish: { run: publishCommand, help: publishHelp },
  study: { run: studyCommand, help: studyHelp },
};

/** Of a command line that was started without one. */
const noApp: BuiltApp = { folder: () => null, policy: '' };

/** Runs one command; returns the exit code. Standard output holds the result alone, standard error one sentence. */
export async function main(args: string[], app: BuiltApp = noApp): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === 'help') {
    process.stdout.write(help);
    return name === undefined ? 2 : 0;
  }
  const command = commands[name];
  if (!command) {
    process.stderr.write(`"${name}" is no command; the commands are ${Object.keys(commands).join(', ')}.\n`);
    return 2;
  }
  if (rest.includes('--help')) {
    process.stdout.write(command.help);
    return 0;
  }
  try {
    await command.run(rest, app);
    return 0;
  } catch (error) {
    if (error instanceof UsageError) {
      process.stderr.write(`${error.message}\n`);
      return 2;
    }
    if (error instanceof UserError) {
      process.stderr.write(`${error.message}\n`);
      return 1;
    }
    throw error;
  }
}
