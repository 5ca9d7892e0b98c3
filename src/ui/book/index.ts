export { BookScreen } from './BookScreen.tsx';
export { files, today } from './files.ts';
export { photoEdit, readPhoto } from './photos/index.ts';
