import type { CallSite } from '../../../io/offline/index.ts';
import { mileText } from '../../../road/index.ts';
import { compassWord } from '../../../units/index.ts';

/** "Cinder Grade Road, mile 3.43, south side". */
export const siteWords = ({ road, mile, sideAzimuthDeg }: CallSite): string =>
  [
    road ?? 'road without a name',
    ...(mile === null ? [] : [`mile ${mileText(mile)}`]),
    `${compassWord(sideAzimuthDeg)} side`,
  ].join(', ');
