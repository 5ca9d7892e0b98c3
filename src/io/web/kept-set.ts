import type { ElevationOptions } from '../ports.ts';

/** What a kept file is for. */
export type KeptRole = 'elevation' | 'roads' | 'marks';

/** Files to be kept together on this device, and what a person said of the rasters. */
export interface FilesToKeep {
  readonly name: string;
  readonly options: ElevationOptions;
  readonly files: readonly { readonly role: KeptRole; readonly file: File }[];
}

/** A set of files that lies on this device, whole. */
export interface KeptSet {
  readonly id: string;
  readonly name: string;
  readonly options: ElevationOptions;
  readonly bytes: number;
  readonly files: readonly { readonly role: KeptRole; readonly name: string; readonly bytes: number }[];
}

/** A kept set opened: files to be read by slices, never copied into memory. */
export interface KeptFiles {
  readonly elevation: readonly File[];
  readonly roads: File | null;
  readonly marks: File | null;
  readonly options: ElevationOptions;
}

/** Bytes copied of all. */
export interface KeepProgress {
  readonly done: number;
  readonly of: number;
}
