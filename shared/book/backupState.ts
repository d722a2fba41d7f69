// What the desk says of the copies that it keeps of the farm folder.

/** How the copies stand. */
export interface BackupState {
  /** The folder that holds them, as a path on the desk's machine. */
  readonly folder: string;
  /** Whether they lie on the same disk as the farm folder: a copy there does not survive the disk. */
  readonly sameDisk: boolean;
  /** The names of the copies without their ending, oldest first; the last one is the newest. */
  readonly copies: readonly string[];
  /** When the newest copy was made, ms; null where there is none. */
  readonly newest_ms: number | null;
  /** Why the last copy could not be made, or not where it should be, in the coordinator's words; null where it could. */
  readonly failed: string | null;
}
