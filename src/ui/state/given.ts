import { create } from 'zustand';
import { type AngleRule, angleRules, defaultAngleRule } from '../../book/index.ts';
import { type Conditions, fairConditions } from '../../rigging/index.ts';

/** Under what the study is made. */
export interface GivenState {
  readonly ruleName: string;
  /** The book's own rules, beside the shipped ones. */
  readonly ownRules: readonly AngleRule[];
  readonly conditions: Conditions;
}

export const useGiven = create<GivenState>()(() => ({
  ruleName: defaultAngleRule.name,
  ownRules: [],
  conditions: fairConditions,
}));

/** The rule of a name: the book's own, else a shipped one, else the shipped default. */
export const ruleNamed = (name: string): AngleRule =>
  [...useGiven.getState().ownRules, ...angleRules].find((rule) => rule.name === name) ?? defaultAngleRule;
