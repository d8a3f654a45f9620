/** What is counted: beats or breaths, and how the pet is meanwhile. */
export interface CountKind {
  readonly key: string;
  readonly word: 'hr' | 'rr';
  /** What is written after the count; empty when nothing is. */
  readonly state: string;
  readonly label: string;
  readonly one: string;
}

export const countKinds: readonly CountKind[] = [
  { key: 'asleep', word: 'rr', state: 'asleep', label: 'Breaths, asleep', one: 'breath' },
  { key: 'rest', word: 'rr', state: 'rest', label: 'Breaths, awake and resting', one: 'breath' },
  { key: 'heart', word: 'hr', state: '', label: 'Heart beats', one: 'beat' },
];

export const countTimes: readonly number[] = [15, 30];

/** A count under way. Times are milliseconds of whatever clock the caller has; nothing here reads one. */
export interface Count {
  readonly seconds: number;
  readonly startedAt: number;
  readonly beats: number;
}

export const start = (seconds: number, now: number): Count => ({ seconds, startedAt: now, beats: 0 });

/** Milliseconds that are left, never below nought. */
export const left = (count: Count, now: number): number => Math.max(0, count.startedAt + count.seconds * 1000 - now);

export const isOver = (count: Count, now: number): boolean => left(count, now) === 0;

/** One more, unless the time is up. */
export const beat = (count: Count, now: number): Count => (isOver(count, now) ? count : { ...count, beats: count.beats + 1 });

/** One less: a tap too many is taken back, also after the time. */
export const undo = (count: Count): Count => ({ ...count, beats: Math.max(0, count.beats - 1) });

/** The rate a minute of a count that is over. */
export const rateOf = (count: Count): number => Math.round((count.beats * 60) / count.seconds);

/** The line as it was counted: nothing is worked out, the note shows the rate beside it. */
export const lineOf = (kind: CountKind, count: Count): string => `${kind.word} ${count.beats}/${count.seconds}s${kind.state === '' ? '' : ` ${kind.state}`}`;
