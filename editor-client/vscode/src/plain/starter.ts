/** A first note: the two facts that everything else rests on, and a place for what comes next. */
export const starterNote = (name: string, species: 'dog' | 'cat', today: string): string => `pet ${name}
species ${species}
# more facts when you have them: breed, sex, born, adult-weight, clinic, phone

${today} log
  `;

/** Today: the clock's day, or the one that a test sets, as for the server. */
export const todayOf = (now: Date, set: string | undefined): string => (/^\d{4}-\d{2}-\d{2}$/.test(set ?? '') ? (set as string) : dayOf(now));

/** The day as notes write it, in the owner's own time zone. */
export const dayOf = (date: Date): string =>
  `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;

/** The name of a pet's file: `pebble.hnote`, and `pebble-2.hnote` where that one is taken. */
export const fileNameOf = (pet: string, number: number): string => {
  const plain = pet.normalize('NFKD').toLowerCase().replace(/\p{M}/gu, '').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '');
  return `${plain === '' ? 'pet' : plain}${number === 1 ? '' : `-${number}`}.hnote`;
};
