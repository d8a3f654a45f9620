/** One thing that is due, as `hnote due --json` prints it. */
export interface DueItem {
  readonly path: string;
  readonly line: number;
  readonly pet?: string | null;
  readonly what: string;
  readonly date?: string | null;
  readonly days?: number | null;
}

/** Reads the report; what is not as expected is left out. */
export function readDue(json: string): DueItem[] {
  const report: unknown = JSON.parse(json);
  const items = typeof report === 'object' && report !== null && 'due' in report ? report.due : [];
  return Array.isArray(items) ? items.filter(isItem) : [];
}

/** When it is due, in words. */
export const whenOf = (item: DueItem): string => {
  const days = item.days;
  if (days === undefined || days === null) {
    return item.date ?? 'no day named';
  }
  const near = days === 0 ? 'today' : days === 1 ? 'tomorrow' : days > 0 ? `in ${days} days` : days === -1 ? 'was due yesterday' : `was due ${-days} days ago`;
  return item.date === undefined || item.date === null ? near : `${item.date}, ${near}`;
};

const isItem = (item: unknown): item is DueItem =>
  typeof item === 'object' && item !== null && 'path' in item && typeof item.path === 'string' && 'line' in item && typeof item.line === 'number' && 'what' in item && typeof item.what === 'string';
