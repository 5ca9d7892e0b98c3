export { MapFlag } from './MapFlag.tsx';
export { MarkPanel } from './MarkPanel.tsx';
export { PlaceInHand } from './PlaceInHand.tsx';
export { SitePanel } from './SitePanel.tsx';
export { Stencil } from './Stencil.tsx';
export { SurveyNotes } from './SurveyNotes.tsx';
