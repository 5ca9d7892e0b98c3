export { type ImageType, imageTypeOf } from './image-type.ts';
export { type PhotoFacts, readExif } from './read-exif.ts';
export { type TakenPhoto, takePhoto } from './take-photo.ts';
