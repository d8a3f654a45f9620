import { dayOf } from './starter.js';

/** The days that a finding may be accepted until: the one that is typed, else some ahead. */
export function acceptDates(today: string, typed: string): readonly { readonly label: string; readonly date: string }[] {
  if (/^\d{4}-\d{2}-\d{2}$/.test(typed.trim())) {
    return [{ label: 'Until that day', date: typed.trim() }];
  }
  const [year, month, day] = today.split('-').map(Number) as [number, number, number];
  return ([[1, 'For a month'], [3, 'For three months'], [12, 'For a year']] as const).map(([months, label]) => {
    const last = new Date(year, month - 1 + months + 1, 0).getDate();
    return { label, date: dayOf(new Date(year, month - 1 + months, Math.min(day, last))) };
  });
}

/** The server's line with the day and the reason of the user. */
export const acceptedLine = (line: string, date: string, why: string): string => line.replace(/ until \d{4}-\d{2}-\d{2}/, ` until ${date} ${why.replace(/[#\s]+/g, ' ')}`);
