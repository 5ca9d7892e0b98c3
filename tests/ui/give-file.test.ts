import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { handOver } from '../../src/ui/give-file.ts';

const link = { href: '', download: '', click: vi.fn() };

beforeEach(() => {
  link.click.mockClear();
  vi.stubGlobal('document', { createElement: () => link });
});
afterEach(() => vi.unstubAllGlobals());

it('shares the sheet where the device takes files, with no download', async () => {
  const share = vi.fn((_: ShareData) => Promise.resolve());
  vi.stubGlobal('navigator', { canShare: () => true, share });
  await handOver('s1-plan.html', '<p>plan</p>', 'text/html');
  const file = share.mock.calls[0]![0].files![0]!;
  expect([file.name, file.type, await file.text()]).toEqual(['s1-plan.html', 'text/html', '<p>plan</p>']);
  expect(link.click).not.toHaveBeenCalled();
});

it.each<[string, object, 'shared' | 'downloaded' | 'called off']>([
  ['no sharing at all', {}, 'downloaded'],
  ['files are not taken', { canShare: () => false }, 'downloaded'],
  [
    'refused',
    { canShare: () => true, share: () => Promise.reject(new DOMException('', 'NotAllowedError')) },
    'downloaded',
  ],
  [
    'called off',
    { canShare: () => true, share: () => Promise.reject(new DOMException('', 'AbortError')) },
    'called off',
  ],
])('%s', async (_, navigator, became) => {
  vi.stubGlobal('navigator', navigator);
  expect(await handOver('s1-plan.html', '<p>plan</p>', 'text/html')).toBe(became);
  expect(link.click).toHaveBeenCalledTimes(became === 'downloaded' ? 1 : 0);
  if (became === 'downloaded') expect(link.download).toBe('s1-plan.html');
});
