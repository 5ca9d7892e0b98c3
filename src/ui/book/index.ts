export { BookScreen } from './BookScreen.tsx';
export { files, giveFile, today } from './files.ts';
export { Photo } from './Photo.tsx';
export { photoEdit, readPhoto } from './take-photo.ts';
