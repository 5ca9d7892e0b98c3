export { MapFlag } from './MapFlag.tsx';
export { MarkPanel } from './MarkPanel.tsx';
export { PlacePanel } from './PlacePanel.tsx';
export { SitePanel } from './SitePanel.tsx';
export { Stencil } from './Stencil.tsx';
export { SurveyNotes } from './SurveyNotes.tsx';
