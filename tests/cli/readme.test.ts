import { readFile } from 'node:fs/promises';
import { expect, it, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';

it('prints the sentence that the README shows for the command that it shows', async () => {
  const readme = await readFile('README.md', 'utf8');
  const command = /npm run -s brinkbook -- (study .*)\n/.exec(readme)![1];
  const shown = /begins with\n\n```\n(.*)\n```/.exec(readme)![1];
  let out = '';
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += text;
    return true;
  });
  const code = await main(command.split(' '));
  stdout.mockRestore();
  expect(code).toBe(0);
  expect(out.split('\n\n')[0].replaceAll('\n', ' ')).toBe(shown);
}, 60_000);
