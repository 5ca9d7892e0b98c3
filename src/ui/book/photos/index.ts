export { PhotoForm } from './PhotoForm.tsx';
export { PhotoList } from './PhotoList.tsx';
export { SitePhotos } from './SitePhotos.tsx';
export { photoEdit, readPhoto } from './take-photo.ts';
