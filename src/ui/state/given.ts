import { create } from 'zustand';
import { type AngleRule, angleRules, defaultAngleRule } from '../../book/index.ts';
import { type Conditions, fairConditions } from '../../rigging/index.ts';

/** Under what the study is made, and what the book says of its district. */
export interface GivenState {
  readonly ruleName: string;
  /** The book's own rules, beside the shipped ones. */
  readonly ownRules: readonly AngleRule[];
  readonly conditions: Conditions;
  /** What the book calls its district; empty where it does not say. */
  readonly districtName: string;
  /** The book says that its district is made up. */
  readonly invented: boolean;
}

export const useGiven = create<GivenState>()(() => ({
  ruleName: defaultAngleRule.name,
  ownRules: [],
  conditions: fairConditions,
  districtName: '',
  invented: false,
}));

/** The rule of a name: the book's own, else a shipped one, else the shipped default. */
export const ruleNamed = (name: string): AngleRule =>
  [...useGiven.getState().ownRules, ...angleRules].find((rule) => rule.name === name) ?? defaultAngleRule;
