/** A typeface list in italics: the map library takes the style from the first name, the letters from the first one that is there. */
export const italic = (typefaces: string): string => `Italic, ${typefaces}`;
