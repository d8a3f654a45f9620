/** Where a new line goes, and what is written there. */
export interface Placed {
  readonly line: number;
  /** True when the line is blank and is filled; else the text becomes a line below it. */
  readonly fills: boolean;
  readonly text: string;
}

const head = /^\s*\d{4}-\d{2}-\d{2}(\s|$)/;

/**
 * The place of an observation: at the cursor when that is within an entry, else at the end of the note. A note without an
 * entry, or one whose last entry is of another day, gets an entry for today.
 */
export function placeObservation(lines: readonly string[], cursor: number, observation: string, today: string): Placed {
  let entry = Math.min(cursor, lines.length - 1);
  while (entry >= 0 && !head.test(lines[entry] ?? '')) {
    entry--;
  }
  if (entry >= 0 && (lines[entry] ?? '').trim().startsWith(today)) {
    return within(lines, cursor, observation);
  }
  const last = lastWritten(lines);
  let lastHead = last;
  while (lastHead >= 0 && !head.test(lines[lastHead] ?? '')) {
    lastHead--;
  }
  return lastHead >= 0 && (lines[lastHead] ?? '').trim().startsWith(today)
    ? { line: last, fills: false, text: `  ${observation}` }
    : { line: last, fills: false, text: `${last < 0 ? '' : '\n'}${today}\n  ${observation}` };
}

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
