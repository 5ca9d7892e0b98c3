/** A refusal that names the command line's options, as the form for own files says it: the options are fields there. */
export const inFormWords = (sentence: string): string =>
  sentence
    .replaceAll(/--crs( EPSG:N)?/g, 'the coordinate system below')
    .replaceAll(/--vertical-unit( m, ft or us-ft)?/g, 'the unit of its heights below')
    .replaceAll(/--terrain-kind( bare-earth or surface)?/g, 'what it shows below')
    .replaceAll(/--vertical-rmse( METRES)?/g, 'the vertical RMSE below');
