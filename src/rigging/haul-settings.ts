import type { ContactSettings } from './contacts.ts';
import type { LandingSettings } from './landing.ts';
import type { LoadSettings } from './load.ts';
import type { PullSettings } from './pulls.ts';
import type { RopeSettings } from './rope-need.ts';
import type { TeamSettings } from './team.ts';
import type { TensionSettings } from './tensions.ts';
import type { ThrowSettings } from './throw.ts';

/** Everything that a book sets about a haul. */
export interface HaulSettings
  extends LoadSettings,
    TensionSettings,
    ContactSettings,
    TeamSettings,
    ThrowSettings,
    LandingSettings,
    PullSettings,
    RopeSettings {
  /** Share of the tension that a pulley passes on. */
  readonly pulleyEfficiency: number;
  /** A shorter throw is not worth rigging, metres. */
  readonly leastThrowM: number;
  readonly mostResets: number;
}
