export { ConditionSwitch } from './Conditions.tsx';
export { Figure } from './Figure.tsx';
export { LayoutsBlock } from './LayoutsBlock.tsx';
export { PeopleBlock } from './PeopleBlock.tsx';
export { TakenBlock } from './TakenBlock.tsx';
export { WaysBlock } from './WaysBlock.tsx';
export { WhyMargin } from './WhyMargin.tsx';
export { whyOrigin } from './why.ts';
