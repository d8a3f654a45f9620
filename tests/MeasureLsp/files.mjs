// The files that are measured: as many lines each, with one line whose value can be turned wrong by one character.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const sample = fileURLToPath(new URL('../../samples/marlow.hnote', import.meta.url));

/** The sample over and over, every copy three years after the one before, the last one as it is; one opening. */
export function notes(count) {
  const source = readFileSync(sample, 'utf8').trimEnd().split('\n');
  const first = source.findIndex(line => /^\d{4}-\d\d-\d\d/.test(line));
  const opening = source.slice(0, first);
  const body = [];
  for (let years = 0; body.length < count - opening.length; years += 3) {
    const copy = source.slice(first).map(line => line.replace(/^(\d{4})(-\d\d-\d\d)/, (_, year, day) => `${String(Number(year) - years).padStart(4, '0')}${day}`));
    body.unshift(...copy, '');
  }
  const kept = body.slice(-(count - opening.length - 1));
  const whole = kept.findIndex(line => /^\d{4}-\d\d-\d\d/.test(line));
  const lines = [...opening, ...kept.slice(whole)];
  let line = lines.length - 1;
  while (!/^ +hr \d+\/15s/.test(lines[line])) line--;
  lines[line] = '  hr 18/15s';
  return { name: 'measure.hnote', language: 'hnote', text: lines.join('\n') + '\n', line, character: 5, right: '1', wrong: '6', hover: 3 };
}

/** A list of small records; a stray quote in one line is wrong. */
export function yaml(count) {
  const lines = [];
  for (let record = 0; lines.length < count - 5; record++) {
    lines.push(`- name: entry ${record}`, '  kind: check', `  pulse: ${60 + record % 40}`, '  seen: [gums, eyes, ears]', '  remark: "as expected"');
  }
  lines.push('- last: "a"');
  return { name: 'measure.yaml', language: 'yaml', text: lines.join('\n') + '\n', line: lines.length - 1, character: 10, right: '"', wrong: '[', hover: 4 };
}

/** An array of small objects; a comma turned into something else is wrong. */
export function json(count) {
  const lines = ['['];
  for (let record = 0; lines.length < count - 6; record++) {
    lines.push('  {', `    "name": "entry ${record}",`, '    "kind": "check",', `    "pulse": ${60 + record % 40}`, '  },');
  }
  lines.push('  { "last": 1 }', ']');
  return { name: 'measure.json', language: 'json', text: lines.join('\n') + '\n', line: lines.length - 2, character: 12, right: '1', wrong: '?', hover: 6 };
}
