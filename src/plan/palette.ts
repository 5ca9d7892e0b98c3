/** The inks of one page. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly ink2: string;
  readonly rule: string;
  readonly accent: string;
  readonly water: string;
  readonly assumed: string;
}

export type PaletteName = 'light' | 'night' | 'black';

/** Light and night as on the screen; `black` for a black-only printer, where dashes and words must tell everything. */
export const palettes: Readonly<Record<PaletteName, Palette>> = {
  light: {
    paper: '#fbf8f1',
    ink: '#1d2a35',
    ink2: '#4a5560',
    rule: '#c9c0ad',
    accent: '#b4451f',
    water: '#3b6f8f',
    assumed: '#6a675f',
  },
  night: {
    paper: '#1a1f23',
    ink: '#e9dfc8',
    ink2: '#c9c0ac',
    rule: '#4c5154',
    accent: '#f0884a',
    water: '#8fbcd6',
    assumed: '#b9b19f',
  },
  black: {
    paper: '#ffffff',
    ink: '#000000',
    ink2: '#000000',
    rule: '#777777',
    accent: '#000000',
    water: '#000000',
    assumed: '#000000',
  },
};
