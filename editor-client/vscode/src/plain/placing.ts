/** Where a new line goes, and what is written there. */
export interface Placed {
  readonly line: number;
  /** True when the line is blank and is filled; else the text becomes a line below it. */
  readonly fills: boolean;
  readonly text: string;
}

const head = /^\s*\d{4}-\d{2}-\d{2}(\s|$)/;

/**
 * The place of an observation in today's entry: that of a line which waits for it (`hr`, `# rr asleep`), the cursor's, or the
 * entry's end. A note whose last entry is of another day gets an entry for today.
 */
export function placeObservation(lines: readonly string[], cursor: number, observation: string, today: string): Placed {
  const last = lastWritten(lines);
  const here = headOf(lines, Math.min(cursor, lines.length - 1));
  const isToday = (line: number): boolean => (lines[line] ?? '').trim().startsWith(today);
  const entry = isToday(here) ? here : headOf(lines, last);
  if (!isToday(entry)) {
    return { line: last, fills: false, text: `${last < 0 ? '' : '\n'}${today}\n  ${observation}` };
  }
  const waiting = waitingLine(lines, entry, cursor, observation);
  return waiting !== null ? { line: waiting, fills: true, text: `  ${observation}` }
    : here === entry ? within(lines, cursor, observation)
    : { line: last, fills: false, text: `  ${observation}` };
}

/** The line of an entry that has the observation's word and no value yet: the cursor's line first. */
function waitingLine(lines: readonly string[], entry: number, cursor: number, observation: string): number | null {
  const waits = (line: number): boolean => new RegExp(`^\\s*#?\\s*${observation.split(' ')[0]}(\\s+(asleep|rest))?\\s*$`).test(lines[line] ?? '');
  let end = entry + 1;
  while (end < lines.length && !head.test(lines[end] ?? '')) {
    end++;
  }
  if (cursor > entry && cursor < end && waits(cursor)) {
    return cursor;
  }
  const found = lines.slice(entry + 1, end).findIndex((_, at) => waits(entry + 1 + at));
  return found < 0 ? null : entry + 1 + found;
}

const headOf = (lines: readonly string[], from: number): number => {
  let line = from;
  while (line >= 0 && !head.test(lines[line] ?? '')) {
    line--;
  }
  return line;
};

function within(lines: readonly string[], cursor: number, observation: string): Placed {
  const here = lines[cursor] ?? '';
  if (here.trim() === '' && cursor > 0) {
    return { line: cursor, fills: true, text: `  ${observation}` };
  }
  // what was written in own words below a line stays with it
  let line = cursor;
  while (/^\s*>/.test(lines[line + 1] ?? '')) {
    line++;
  }
  return { line, fills: false, text: `  ${observation}` };
}

function lastWritten(lines: readonly string[]): number {
  let last = lines.length - 1;
  while (last >= 0 && (lines[last] ?? '').trim() === '') {
    last--;
  }
  return last;
}
