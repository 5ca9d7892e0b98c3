export { MarkInHand, PlaceInHand } from './InHand.tsx';
export { MapFlag } from './MapFlag.tsx';
export { SiteKeys } from './SiteKeys.tsx';
export { SitePanel } from './SitePanel.tsx';
export { Stencil } from './Stencil.tsx';
export { SurveyNotes } from './SurveyNotes.tsx';
