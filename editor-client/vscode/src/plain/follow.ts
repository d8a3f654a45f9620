/**
 * Which of the page's texts is about a line of the note: the one that shares most of its words, rare ones counting more.
 * Returns its index, or -1 when nothing is near enough.
 */
export function bestMatch(line: string, day: string | null, texts: readonly string[]): number {
  const wanted = new Set(wordsOf(line));
  if (wanted.size === 0) {
    return -1;
  }
  const found = texts.map((text) => new Set(wordsOf(text)));
  const weight = new Map<string, number>();
  for (const word of wanted) {
    const holders = found.filter((words) => words.has(word)).length;
    weight.set(word, holders === 0 ? 0 : 1 / holders + 0.01);
  }
  const day_ = day ?? '';
  let best = -1;
  let bestScore = 0;
  found.forEach((words, index) => {
    let score = 0;
    let shared = 0;
    for (const [word, worth] of weight) {
      if (words.has(word)) {
        score += worth;
        shared++;
      }
    }
    // a long text holds many words by chance, and a text of the same day is more likely the one
    score = (score * shared) / (wanted.size * Math.sqrt(4 + words.size));
    if (day_ !== '' && (texts[index] ?? '').includes(day_)) {
      score *= 1.5;
    }
    if (shared * 2 >= wanted.size && score > bestScore) {
      best = index;
      bestScore = score;
    }
  });
  return best;
}

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+(?:[./][\p{L}\p{N}]+)*/gu) ?? [];
