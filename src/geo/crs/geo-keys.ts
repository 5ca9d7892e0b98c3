/**
 * The georeferencing keys of a GeoTIFF by their names in the standard (OGC GeoTIFF 1.1, section 7.4), as far as they are
 * read here. [source: geotiff11]
 */
export interface GeoKeys {
  readonly GTModelTypeGeoKey?: number;
  readonly GTCitationGeoKey?: string;
  readonly GeographicTypeGeoKey?: number;
  readonly GeogGeodeticDatumGeoKey?: number;
  readonly GeogEllipsoidGeoKey?: number;
  readonly GeogAngularUnitsGeoKey?: number;
  readonly GeogPrimeMeridianGeoKey?: number;
  readonly GeogSemiMajorAxisGeoKey?: number;
  readonly GeogSemiMinorAxisGeoKey?: number;
  readonly GeogInvFlatteningGeoKey?: number;
  readonly GeogTOWGS84GeoKey?: ArrayLike<number>;
  readonly ProjectedCSTypeGeoKey?: number;
  readonly PCSCitationGeoKey?: string;
  readonly ProjectionGeoKey?: number;
  readonly ProjCoordTransGeoKey?: number;
  readonly ProjLinearUnitsGeoKey?: number;
  readonly ProjLinearUnitSizeGeoKey?: number;
  readonly ProjStdParallel1GeoKey?: number;
  readonly ProjStdParallel2GeoKey?: number;
  readonly ProjNatOriginLongGeoKey?: number;
  readonly ProjNatOriginLatGeoKey?: number;
  readonly ProjFalseEastingGeoKey?: number;
  readonly ProjFalseNorthingGeoKey?: number;
  readonly ProjFalseOriginLongGeoKey?: number;
  readonly ProjFalseOriginLatGeoKey?: number;
  readonly ProjFalseOriginEastingGeoKey?: number;
  readonly ProjFalseOriginNorthingGeoKey?: number;
  readonly ProjCenterLongGeoKey?: number;
  readonly ProjCenterLatGeoKey?: number;
  readonly ProjCenterEastingGeoKey?: number;
  readonly ProjCenterNorthingGeoKey?: number;
  readonly ProjScaleAtNatOriginGeoKey?: number;
  readonly ProjScaleAtCenterGeoKey?: number;
  readonly ProjStraightVertPoleLongGeoKey?: number;
  readonly VerticalCSTypeGeoKey?: number;
  readonly VerticalCitationGeoKey?: string;
}

/** A key's value where the standard says that the definition follows in other keys. */
export const USER_DEFINED = 32767;

/** True for a value that is a code of the EPSG data set. */
export const isCode = (value: number | undefined): value is number =>
  value !== undefined && value > 0 && value !== USER_DEFINED;
