import { expect, test } from 'vitest';
import { hostsOf, pagePolicy } from '../../config/csp.mjs';

test('the page asks its own host alone unless a host of basemaps is named', () => {
  expect(pagePolicy).toContain("connect-src 'self';");
  expect(hostsOf(undefined)).toEqual([]);
  expect(hostsOf('https://tiles.example.org, http://127.0.0.1:8080')).toEqual([
    'https://tiles.example.org',
    'http://127.0.0.1:8080',
  ]);
});

test.each([
  '*',
  'https://*',
  'tiles.example.org',
  'http://tiles.example.org',
  'https://a.example/x',
  "'unsafe-inline'",
])('what is no plain origin is refused: %s', (name) => {
  expect(() => hostsOf(name)).toThrow(/is no origin; write it as/);
});
