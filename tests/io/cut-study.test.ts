import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { defaultAngleRule } from '../../src/book/index.ts';
import { openCells, openElevation, readRoads, studySite } from '../../src/io/index.ts';
import { fileSource, writeCut } from '../../src/io/node/index.ts';
import { publishedRoads } from '../../src/io/publish/index.ts';
import { fairConditions } from '../../src/rigging/index.ts';
import { indexRoads } from '../../src/road/index.ts';
import { shippedResources } from '../../src/study/index.ts';
import { openData } from '../helpers/open-data.ts';

const data = openData('quebec_road_1m');

test.skipIf(!data)(
  'on measured ground a study from the published cut and roads is the study from the whole files, to the last digit',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'brinkbook-cut-study-'));
    const at = { lon: -67.610521, lat: 49.6421927 };
    const whole = join(data!, 'j5gr_dtm.tif');
    const path = join(folder, 'j5gr_dtm.tif');
    const roads = readRoads(
      readFileSync(join(data!, 'derived_centerline_corrected_wgs84.geojson'), 'utf8'),
      'the roads',
    );
    const study = async (raster: string, network: typeof roads) => {
      const source = await openElevation({ ...fileSource(raster), name: 'j5gr_dtm.tif' });
      const made = await studySite([source], {
        ...{
          roads: indexRoads(network),
          marks: [],
          at,
          side: null,
          patient: null,
          rule: defaultAngleRule,
          units: 'us',
        },
        ...{ conditions: fairConditions, patients: 1, pins: {}, events: [], field: null, resources: shippedResources },
      });
      await source.close();
      return made;
    };
    try {
      const cells = await openCells(fileSource(whole));
      await writeCut(path, cells, [cells.windowAround(at, 700)!]);
      await cells.close();
      const made = await study(path, readRoads(publishedRoads(roads), 'the published roads'));
      expect(made.angle).not.toBeNull();
      // The file states no unit of its heights: the cut may not seem to.
      expect(made.warnings.some(({ text }) => /does not state its vertical unit/.test(text))).toBe(true);
      expect(made).toEqual(await study(whole, roads));
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
  60_000,
);
