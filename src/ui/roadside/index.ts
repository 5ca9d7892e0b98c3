export { CheckScreen } from './CheckScreen.tsx';
