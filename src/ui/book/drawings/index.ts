export { ApparatusOutline } from './ApparatusOutline.tsx';
export { RopeDrawing } from './RopeDrawing.tsx';
