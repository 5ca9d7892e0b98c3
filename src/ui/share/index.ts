export { ShareBlock } from './ShareBlock.tsx';
