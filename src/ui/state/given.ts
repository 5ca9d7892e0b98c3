import { create } from 'zustand';
import { defaultAngleRule } from '../../book/index.ts';
import { type Conditions, fairConditions } from '../../rigging/index.ts';

/** Under what the study is made. */
export interface GivenState {
  readonly ruleName: string;
  readonly conditions: Conditions;
}

export const useGiven = create<GivenState>()(() => ({
  ruleName: defaultAngleRule.name,
  conditions: fairConditions,
}));
