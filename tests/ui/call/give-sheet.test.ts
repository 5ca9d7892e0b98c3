import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { giveSheet } from '../../../src/ui/call/parts/give-sheet.ts';

const link = { href: '', download: '', click: vi.fn() };

beforeEach(() => {
  link.click.mockClear();
  vi.stubGlobal('document', { createElement: () => link });
});
afterEach(() => vi.unstubAllGlobals());

it('shares the sheet where the device takes files, with no download', async () => {
  const share = vi.fn((_: ShareData) => Promise.resolve());
  vi.stubGlobal('navigator', { canShare: () => true, share });
  await giveSheet('s1-plan.html', '<p>plan</p>');
  const file = share.mock.calls[0]![0].files![0]!;
  expect([file.name, file.type, await file.text()]).toEqual(['s1-plan.html', 'text/html', '<p>plan</p>']);
  expect(link.click).not.toHaveBeenCalled();
});

it.each([
  ['no sharing at all', {}, 1],
  ['files are not taken', { canShare: (): boolean => false }, 1],
  ['refused', { canShare: () => true, share: () => Promise.reject(new DOMException('', 'NotAllowedError')) }, 1],
  ['called off', { canShare: () => true, share: () => Promise.reject(new DOMException('', 'AbortError')) }, 0],
])('%s', async (_, navigator, downloads) => {
  vi.stubGlobal('navigator', navigator);
  await giveSheet('s1-plan.html', '<p>plan</p>');
  expect(link.click).toHaveBeenCalledTimes(downloads);
  if (downloads) expect(link.download).toBe('s1-plan.html');
});
