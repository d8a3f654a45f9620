// Where a line goes in a note: plain text in, a change out.
export interface Insertion { from: number; to: number; insert: string }

/** The day as the notation writes it. */
export const dayOf = (date: Date): string => `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;

/** Puts a line at the end of the entry with this heading; where there is none, a new entry at the end of the note. */
export function lineInto(text: string, head: string, line: string): Insertion {
  const lines = text.split('\n');
  const at = lines.findLastIndex((one) => one === head || one.startsWith(`${head} `) || one.startsWith(`${head}\r`) || (one.startsWith(head.slice(0, 10)) && one.trimEnd().endsWith(head.slice(10))));
  if (at < 0) {
    const from = text.trimEnd().length;
    return { from, to: text.length, insert: `${from === 0 ? '' : '\n\n'}${head}\n  ${line}\n` };
  }
  let last = at;
  for (let next = at + 1; next < lines.length && !/^\S/.test(lines[next]!); next++) {
    last = lines[next]!.trim() === '' ? last : next;
  }
  const from = lines.slice(0, last + 1).join('\n').length;
  return { from, to: from, insert: `\n  ${line}` };
}
