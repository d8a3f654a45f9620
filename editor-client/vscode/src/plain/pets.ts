/** What the view says of one note. */
export interface PetRow {
  readonly name: string;
  /** Its last check, as the note dates it; null where there is none. */
  readonly lastCheck: string | null;
}

/** The row of a note: its pet by the first line that names one, else the name of its file. */
export function petRow(text: string, file: string): PetRow {
  const name = /^pet[ \t]+([^#\r\n]+)/m.exec(text)?.[1]?.trim();
  return { name: name === undefined || name === '' ? file : name, lastCheck: lastCheck(text) };
}

/** The day of the last check in which something is written: one that is only begun is none. */
function lastCheck(text: string): string | null {
  let day = '';
  let last = '';
  for (const line of text.split(/\r?\n/)) {
    const head = /^\s*(\d{4}-\d{2}-\d{2})\b(.*)/.exec(line);
    if (head !== null) {
      day = /\bcheck\b/.test(head[2] ?? '') ? head[1]! : '';
    } else if (day > last && /^\s*[^#\s]/.test(line)) {
      last = day;
    }
  }
  return last === '' ? null : last;
}

/** A day of a note for people: its year only where that is another one than today's. */
export const dayInWords = (day: string, today: string): string => new Date(`${day}T00:00:00Z`).toLocaleDateString('en-GB', {
  day: 'numeric', month: 'short', timeZone: 'UTC', ...(day.slice(0, 4) === today.slice(0, 4) ? {} : { year: 'numeric' }),
});
