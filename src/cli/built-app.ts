/** The app as built for a browser. */
export interface BuiltApp {
  /** Its folder, built first where it is old; null where it could not be built. */
  folder(): string | null;
  /** Content security policy of a page whose host sends none. */
  readonly policy: string;
}
