import { describe, expect, it } from 'vitest';
import { agreedCrs, type Crs, crsOfGeoKeys, crsOfText, type GeoKeys, loadEpsgTable } from '../../src/geo/index.ts';

const table = await loadEpsgTable();
const text = (name: string): Crs => crsOfText(table, name, '--crs');
const keyed = (keys: GeoKeys): Crs | null => crsOfGeoKeys(table, keys, 'a.tif');

describe('crsOfText', () => {
  it('reads codes, compound codes and OGC names alike', () => {
    for (const name of [
      'EPSG:32611',
      '32611',
      'epsg:32611',
      'urn:ogc:def:crs:EPSG::32611',
      'http://www.opengis.net/def/crs/EPSG/0/32611',
    ]) {
      expect(text(name).text).toBe('EPSG:32611');
    }
    expect(text('EPSG:26918+5703')).toMatchObject({
      text: 'EPSG:26918+5703',
      unitM: 1,
      vertical: { unit: 'm', datum: 'NAVD88 height' },
    });
    expect(text('EPSG:5498')).toMatchObject({ unitM: null, vertical: { unit: 'm', datum: 'NAVD88 height' } });
    expect(text('EPSG:2232+6360').vertical).toEqual({ unit: 'us-ft', datum: 'NAVD88 height (ftUS)' });
  });

  it('reads definitions, with the zeros that they leave out', () => {
    const albers = text('+proj=aea +lat_1=29.5 +lat_2=45.5 +lon_0=-96 +lat_0=23 +ellps=GRS80');
    const [x, y] = albers.fromLonLat(-105, 39);
    const [x5070, y5070] = text('EPSG:5070').fromLonLat(-105, 39);
    expect(x).toBeCloseTo(x5070, 6);
    expect(y).toBeCloseTo(y5070, 6);
  });

  it('reads WKT, by its code where it has one', () => {
    const base =
      'GEOGCS["G",DATUM["D",SPHEROID["GRS 1980",6378137,298.257222101]],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433]]';
    const plane = `PROJCS["Own grid",${base},PROJECTION["Transverse_Mercator"],PARAMETER["latitude_of_origin",0],PARAMETER["central_meridian",-129],PARAMETER["scale_factor",0.9996],PARAMETER["false_easting",1640416.6666666667],PARAMETER["false_northing",0],UNIT["US survey foot",0.304800609601219]`;
    const own = text(`${plane}]`);
    expect(own).toMatchObject({ text: 'Own grid' });
    expect(own.unitM).toBeCloseTo(1200 / 3937, 12);
    const [x, y] = own.fromLonLat(-128, 44);
    const [utmX, utmY] = text('EPSG:32609').fromLonLat(-128, 44);
    expect(x * (1200 / 3937)).toBeCloseTo(utmX, 2);
    expect(y * (1200 / 3937)).toBeCloseTo(utmY, 2);
    expect(text(`${plane},AUTHORITY["EPSG","32609"]]`).text).toBe('EPSG:32609');
  });

  it('refuses with one sentence', () => {
    expect(() => text('the usual')).toThrow(
      '--crs is "the usual", which names no coordinate reference system; write it as EPSG:N, for instance EPSG:32610.',
    );
    expect(() => text('EPSG:30999')).toThrow(/^--crs names EPSG:30999, which is not in the table/);
    expect(() => text('EPSG:5703')).toThrow(/says how heights count but not where/);
    expect(() => text('EPSG:26741')).toThrow(/NAD27 .*needs a grid file that is not carried here; convert the raster/);
    expect(() => text('EPSG:2327')).toThrow(/Xian 1980 .*its shift to WGS 84 is not known to 5 m/);
    expect(() => text('EPSG:2053')).toThrow(/its axes do not point east and north/);
    expect(() => text('EPSG:4807')).toThrow(/it counts angles in grads/);
    expect(() => text('+proj=tmerc +ellps=bessel')).toThrow(/on a datum whose shift to WGS 84 is not given/);
    expect(() => text('+proj=tmerc +lon_0=9 +ellps=clrk66 +nadgrids=conus')).toThrow(/shift to WGS 84 is not given/);
    expect(() => text('+proj=nowhere')).toThrow(/cannot be read here/);
    expect(() => text('EPSG:32609+5715')).toThrow(/gives depths/);
  });
});

describe('crsOfGeoKeys', () => {
  it('reads codes and the heights beside them', () => {
    expect(keyed({ GTModelTypeGeoKey: 1, ProjectedCSTypeGeoKey: 26918 })).toMatchObject({
      text: 'EPSG:26918',
      vertical: null,
    });
    expect(
      keyed({
        GTModelTypeGeoKey: 1,
        ProjectedCSTypeGeoKey: 2232,
        ProjLinearUnitsGeoKey: 9003,
        VerticalCSTypeGeoKey: 6360,
      }),
    ).toMatchObject({
      text: 'EPSG:2232+6360',
      vertical: { unit: 'us-ft', datum: 'NAVD88 height (ftUS)' },
    });
    expect(keyed({ GTModelTypeGeoKey: 2, GeographicTypeGeoKey: 4326, GeogAngularUnitsGeoKey: 9102 })).toMatchObject({
      text: 'EPSG:4326',
      unitM: null,
    });
  });

  it('leaves the unit of unknown heights open and keeps their name', () => {
    const crs = keyed({ ProjectedCSTypeGeoKey: 26918, VerticalCSTypeGeoKey: 5103, VerticalCitationGeoKey: 'NAVD88' });
    expect(crs?.vertical).toEqual({ unit: null, datum: 'NAVD88' });
  });

  it('says nothing where the keys say nothing', () => {
    expect(keyed({})).toBeNull();
    expect(keyed({ GTModelTypeGeoKey: 32767 })).toBeNull();
    expect(keyed({ GTCitationGeoKey: 'unnamed' })).toBeNull();
  });

  it('refuses a unit that contradicts the code, angles in grads, geocentric models and unknown methods', () => {
    expect(() => keyed({ ProjectedCSTypeGeoKey: 26918, ProjLinearUnitsGeoKey: 9003 })).toThrow(
      /^a\.tif names EPSG:26918, whose unit is 1 m, but states a unit of 0\.3048006\d* m beside it; correct the file/,
    );
    expect(() => keyed({ ProjectedCSTypeGeoKey: 2232, ProjLinearUnitsGeoKey: 9002 })).toThrow(/names EPSG:2232/);
    expect(() => keyed({ GeographicTypeGeoKey: 4326, GeogAngularUnitsGeoKey: 9105 })).toThrow(
      /in another unit than degrees/,
    );
    expect(() => keyed({ GTModelTypeGeoKey: 3, GeographicTypeGeoKey: 4978 })).toThrow(/from the Earth's centre/);
    expect(() => keyed({ ProjectedCSTypeGeoKey: 32767, GeographicTypeGeoKey: 4326, ProjCoordTransGeoKey: 23 })).toThrow(
      /GeoTIFF method 23/,
    );
    expect(() => keyed({ ProjectedCSTypeGeoKey: 32767, ProjCoordTransGeoKey: 1 })).toThrow(
      /without a datum; give .* --crs/,
    );
    expect(() => keyed({ ProjectedCSTypeGeoKey: 32767, GeographicTypeGeoKey: 4267, ProjCoordTransGeoKey: 1 })).toThrow(
      /NAD27/,
    );
    expect(() => keyed({ ProjectedCSTypeGeoKey: 26918, VerticalCSTypeGeoKey: 5715 })).toThrow(/^a\.tif gives depths/);
  });

  it('reads a definition that a citation carries', () => {
    const wkt = (datum: string, spheroid: string): string =>
      `ESRI PE String = PROJCS["Own_zone",GEOGCS["GCS_Own",DATUM["${datum}",SPHEROID[${spheroid}]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",-129.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]`;
    const keys = (text: string): GeoKeys => ({
      GTModelTypeGeoKey: 1,
      ProjectedCSTypeGeoKey: 32767,
      GTCitationGeoKey: text,
    });
    const crs = keyed(keys(wkt('D_North_American_1983', '"GRS_1980",6378137.0,298.257222101')));
    expect(crs).toMatchObject({ text: 'Own_zone', unitM: 1 });
    const [x, y] = crs!.fromLonLat(-128, 44);
    const [utmX, utmY] = text('EPSG:26909').fromLonLat(-128, 44);
    expect(x).toBeCloseTo(utmX, 4);
    expect(y).toBeCloseTo(utmY, 4);
    expect(() => keyed(keys(wkt('D_North_American_1927', '"Clarke_1866",6378206.4,294.9786982')))).toThrow(
      /on a datum whose shift to WGS 84 is not given/,
    );
  });

  it('reads a projection defined by its keys, false origin in its own unit', () => {
    const crs = keyed({
      GTModelTypeGeoKey: 1,
      ProjectedCSTypeGeoKey: 32767,
      PCSCitationGeoKey: 'County grid',
      GeographicTypeGeoKey: 4269,
      ProjCoordTransGeoKey: 8,
      ProjLinearUnitsGeoKey: 9003,
      ProjStdParallel1GeoKey: 39.75,
      ProjStdParallel2GeoKey: 38.45,
      ProjFalseOriginLatGeoKey: 37.8333333333333,
      ProjFalseOriginLongGeoKey: -105.5,
      ProjFalseOriginEastingGeoKey: 3000000,
      ProjFalseOriginNorthingGeoKey: 1000000,
    });
    expect(crs).toMatchObject({ text: 'County grid' });
    const [x, y] = crs!.fromLonLat(-105, 39);
    const [rightX, rightY] = text('EPSG:2232').fromLonLat(-105, 39);
    expect(x).toBeCloseTo(rightX, 3);
    expect(y).toBeCloseTo(rightY, 3);
  });
});

describe('agreedCrs', () => {
  const at = { x: 500000, y: 4870000 };
  const agree = (file: string | null, given: string | null): Crs =>
    agreedCrs(file === null ? null : text(file), given === null ? null : text(given), at, 'a.tif');

  it('fills in, and takes the same twice', () => {
    expect(agree('EPSG:32609', null).text).toBe('EPSG:32609');
    expect(agree(null, 'EPSG:32609').text).toBe('EPSG:32609');
    expect(agree('EPSG:32609', '32609').text).toBe('EPSG:32609');
    expect(agree('EPSG:32609', 'EPSG:32609+5703').vertical).toEqual({ unit: 'm', datum: 'NAVD88 height' });
  });

  it('asks where neither says it, and refuses two that differ', () => {
    expect(() => agree(null, null)).toThrow(
      'a.tif does not say in which coordinate reference system it is; give it with --crs EPSG:N.',
    );
    expect(() => agree('EPSG:32609', 'EPSG:32610')).toThrow(
      'a.tif states EPSG:32609, but EPSG:32610 was given; leave --crs out or correct the file.',
    );
    expect(() => agree('EPSG:32609', 'EPSG:4326')).toThrow(/states EPSG:32609, but EPSG:4326 was given/);
    expect(() => agree('EPSG:32609+5703', 'EPSG:32609+6360')).toThrow(
      'a.tif states heights in NAVD88 height, but heights in NAVD88 height (ftUS) was given; leave --crs out or correct the file.',
    );
  });

  it('refuses a raster that lies outside its own system', () => {
    expect(() => agree('EPSG:4326', null)).toThrow(/^a\.tif lies at 500000, 4870000, which is outside where EPSG:4326/);
  });
});
