/** A typeface list in italics: the map library takes the style from the first name, the letters from the first one that is there. */
export const italic = (typefaces: string): string => `Italic, ${typefaces}`;

/** The same in bold; `inItalics` too. */
export const bold = (typefaces: string, inItalics = false): string =>
  `${inItalics ? 'Bold Italic' : 'Bold'}, ${typefaces}`;
