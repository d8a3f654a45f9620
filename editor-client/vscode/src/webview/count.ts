// Runs in the web view that counts. Every time comes from one clock, which a test may replace.
import { beat, countKinds, countTimes, isOver, left, lineOf, start, type Count, type CountKind } from '../plain/count.js';

interface Editor { postMessage(message: { kind: 'write'; line: string } | { kind: 'close' }): void }
declare function acquireVsCodeApi(): Editor;
declare global { interface Window { healthNotesClock?: { now(): number } } }

const editor = acquireVsCodeApi();
const byId = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const clock = (): number => (window.healthNotesClock ?? performance).now();
let kind: CountKind = countKinds[0]!;
let seconds = 30;
let count: Count | null = null;
let done = false;

function choices<T>(id: string, values: readonly T[], label: (value: T) => string, chosen: () => T, choose: (value: T) => void): void {
  for (const value of values) {
    const button = document.createElement('button');
    button.textContent = label(value);
    button.dataset['value'] = label(value);
    button.addEventListener('click', () => { choose(value); reset(); });
    byId(id).append(button);
  }
  painters.push(() => [...byId(id).children].forEach((child, i) => child.setAttribute('aria-pressed', String(values[i] === chosen()))));
}

const painters: (() => void)[] = [];
choices('kinds', countKinds, (k) => k.label, () => kind, (k) => { kind = k; });
choices('times', countTimes, (t) => `${t} s`, () => seconds, (t) => { seconds = t; });

function reset(): void {
  count = null;
  done = false;
  paint();
  byId('tap').focus();
}

function press(): void {
  if (done) {
    return;
  }
  count = count === null ? start(seconds, clock()) : beat(count, clock());
  tick();
}

function tick(): void {
  done = count !== null && isOver(count, clock());
  paint();
}

function paint(): void {
  painters.forEach((draw) => draw());
  byId('tap').textContent = done ? `${count?.beats ?? 0} in ${seconds} s` : count === null ? 'Start' : String(count.beats);
  byId('left').textContent = count === null ? `Press the space bar to start, then once at each ${kind.one}.`
    : done ? '' : `${Math.ceil(left(count, clock()) / 1000)} s left. Press at each ${kind.one}.`;
  byId('line').textContent = done && count !== null ? lineOf(kind, count) : '';
  byId('after').hidden = !done;
  byId<HTMLButtonElement>('write').disabled = !done || (count?.beats ?? 0) === 0;
  byId<HTMLButtonElement>('tap').disabled = done;
}

byId('tap').addEventListener('pointerdown', (event) => { event.preventDefault(); press(); });
byId('again').addEventListener('click', reset);
byId('write').addEventListener('click', () => {
  if (count !== null) {
    editor.postMessage({ kind: 'write', line: lineOf(kind, count) });
  }
});
window.addEventListener('keydown', (event) => {
  const onChoice = event.target instanceof HTMLButtonElement && event.target.id !== 'tap';
  if (event.key === ' ' && !(onChoice && count === null && !done) && !done) {
    event.preventDefault();
    // a key held down is one press
    if (!event.repeat) {
      press();
    }
  } else if (event.key === 'Enter' && done && event.target === document.body) {
    byId('write').click();
  } else if (event.key === 'Escape') {
    count === null ? editor.postMessage({ kind: 'close' }) : reset();
  }
});
// The button that writes takes no focus by itself: a last press of the space bar that comes late must not write.
setInterval(() => {
  if (count !== null && !done) {
    tick();
  }
}, 50);
reset();
