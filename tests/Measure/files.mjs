// Files of a wanted number of lines for each server. Each names three places in its last lines: one character that makes
// its line right or wrong, a place to type at in the same line, and places to ask for completion and hover.
import { readFileSync } from 'node:fs';

// The sample's opening, then its entries again and again in earlier years, so that the last are of today.
export function note(lines, sample) {
  const source = readFileSync(sample, 'utf8').trimEnd().split('\n');
  const first = source.findIndex((line) => /^\d{4}-\d\d-\d\d/.test(line));
  const opening = source.slice(0, first);
  const entries = [...source.slice(first), ''];
  const years = 5;
  const copies = Math.max(1, Math.ceil((lines - opening.length) / entries.length));
  const all = [];
  for (let copy = copies - 1; copy >= 0; copy--) {
    for (const line of entries) {
      const head = /^(\d{4})(-\d\d-\d\d)(.*)/.exec(line);
      // a century and a half of notes does not exist: beyond 100 years back the years are taken again
      const year = head && Number(head[1]) - ((copy * years) % 100);
      all.push(head ? `${year}${head[2] === '-02-29' ? '-02-28' : head[2]}${head[3]}` : line);
    }
  }
  const text = [...opening, ...all.slice(Math.max(0, all.length - (lines - opening.length)))];
  const line = text.findLastIndex((one) => one.startsWith('  temp '));
  text[line] = '  temp 38.6q rectal # it';
  const pulse = text.findLastIndex((one) => one.startsWith('  hr '));
  const gums = text.findLastIndex((one) => one.startsWith('  gums '));
  return {
    text: text.join('\n'), language: 'hnote', uri: 'file:///notes/measure.hnote', line,
    flip: { character: 11, right: 'C', wrong: 'q' },
    typing: 24,
    completion: { line: gums, character: 7 },
    hover: { line: pulse, character: 3 },
  };
}

// Maps of ten lines in a list; the wrong character writes one key of the last map twice.
export function yaml(lines) {
  const text = [];
  for (let item = 0; text.length + 10 <= lines; item++) {
    text.push(`- date: 2026-01-${String((item % 28) + 1).padStart(2, '0')}`, '  kind: check', `  pulse: ${60 + (item % 40)}`, '  gums: pink', '  weight: 27.4',
      '  lump:', '    site: flank', `    size: ${item % 30}`, '  note: looked well', '  done: true');
  }
  const line = text.length - 8;
  text[line] = '  kind: 72 # it';
  return {
    text: text.join('\n'), language: 'yaml', uri: 'file:///notes/measure.yaml', line,
    // pulse: becomes a second kind: by a whole word less one letter, so that one character decides
    flip: { character: 5, right: 's', wrong: 'd' },
    typing: 15,
    completion: { line: line + 1, character: 2 },
    hover: { line: line + 1, character: 3 },
  };
}

// Objects of ten lines in an array; the wrong character makes a number none.
export function json(lines) {
  const text = ['['];
  for (let item = 0; text.length + 11 <= lines; item++) {
    text.push('  {', `    "date": "2026-01-${String((item % 28) + 1).padStart(2, '0')}",`, '    "kind": "check",', `    "pulse": ${60 + (item % 40)},`, '    "gums": "pink",',
      '    "weight": 27.4,', `    "lump": ${item % 30},`, '    "note": "looked well",', '    "done": true', '  },');
  }
  text[text.length - 1] = '  }';
  text.push(']');
  const line = text.length - 8;
  text[line] = '    "pulse": 7x, "it": "it",';
  return {
    text: text.join('\n'), language: 'json', uri: 'file:///notes/measure.json', line,
    flip: { character: 14, right: '2', wrong: 'x' },
    typing: 25,
    completion: { line: line + 1, character: 5 },
    hover: { line: line + 1, character: 6 },
  };
}
