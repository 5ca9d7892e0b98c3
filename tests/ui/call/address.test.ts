import fc from 'fast-check';
import { expect, it } from 'vitest';
import { qrWords } from '../../../src/plan/sheet/qr.ts';
import { readCallAddress, writeCallAddress } from '../../../src/ui/call/address.ts';

it.each([
  ['', { kind: 'start' }],
  ['#', { kind: 'start' }],
  ['#site=kettle-bend', { kind: 'site', id: 'kettle-bend', at: null }],
  ['#site=kettle-bend&at=44.0012,-128.0034', { kind: 'site', id: 'kettle-bend', at: { lat: 44.0012, lon: -128.0034 } }],
  // A position that cannot be read does not take the site away.
  ['#site=kettle-bend&at=nowhere', { kind: 'site', id: 'kettle-bend', at: null }],
  ['#at=44.0012,-128.0034', { kind: 'at', at: { lat: 44.0012, lon: -128.0034 }, errorM: null }],
  ['#at=44.0012,-128.0034,25', { kind: 'at', at: { lat: 44.0012, lon: -128.0034 }, errorM: 25 }],
  ['#at=44.0012,%20-128.0034', { kind: 'at', at: { lat: 44.0012, lon: -128.0034 }, errorM: null }],
  // A longitude first is no latitude: it is read as typed, and questioned there.
  ['#at=-128.0034,44.0012', { kind: 'unread', text: '-128.0034,44.0012' }],
  ['#at=44.0012,-200', { kind: 'unread', text: '44.0012,-200' }],
  ['#at=18S%20UJ%2023486%2006483', { kind: 'unread', text: '18S UJ 23486 06483' }],
  ['#at=%E0%A4%A', { kind: 'unread', text: '%E0%A4%A' }],
  ['#site=<script>', { kind: 'start' }],
  ['#other=1', { kind: 'start' }],
])('reads %s', (hash, address) => {
  expect(readCallAddress(hash)).toEqual(address);
});

it('still reads the codes with the position in the query', () => {
  const at = { lat: 44.0012, lon: -128.0034 };
  expect(readCallAddress('#site=s1', '?at=44.0012,-128.0034')).toEqual({ kind: 'site', id: 's1', at });
  expect(readCallAddress('', '?at=44.0012,-128.0034')).toEqual({ kind: 'start' });
});

it("reads the site's code of the plan sheet, with nothing before the #", () => {
  const at = { lat: 44.0012, lon: -128.0034 };
  const url = new URL(qrWords('https://host.example/', 's1', at));
  expect(url.pathname + url.search).toBe('/call/');
  const address = readCallAddress(url.hash);
  expect(address).toEqual({ kind: 'site', id: 's1', at });
  expect(readCallAddress(writeCallAddress(address))).toEqual(address);
});

it('writes what it reads', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -90, max: 90, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.option(fc.nat(5000)),
      (lat, lon, errorM) => {
        const back = readCallAddress(writeCallAddress({ kind: 'at', at: { lat, lon }, errorM }));
        if (back.kind !== 'at') throw new Error(`Read as ${back.kind}.`);
        expect(Math.abs(back.at.lat - lat)).toBeLessThan(1e-7);
        expect(Math.abs(back.at.lon - lon)).toBeLessThan(1e-7);
        expect(back.errorM).toBe(errorM);
      },
    ),
    { seed: 5 },
  );
});
