// Runs in the web view that counts. Every time comes from one clock, which a test may replace.
import { beat, countKinds, countTimes, isOver, left, lineOf, rateOf, start, undo, type Count, type CountKind } from '../plain/count.js';

interface Editor { postMessage(message: { kind: 'write'; line: string } | { kind: 'close' } | { kind: 'usual'; word: string; state: string }): void }
declare function acquireVsCodeApi(): Editor;
declare global { interface Window { healthNotesClock?: { now(): number } } }

const editor = acquireVsCodeApi();
const byId = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;
const clock = (): number => (window.healthNotesClock ?? performance).now();
let kind: CountKind = countKinds[0]!;
let seconds = 30;
let count: Count | null = null;
let done = false;
/** What is usual for this pet, by the word and state counted. */
const usual = new Map<string, string>();
const keyOf = (one: CountKind): string => `${one.word} ${one.state}`;

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
  const before = count?.beats ?? -1;
  count = count === null ? start(seconds, clock()) : beat(count, clock());
  if (count.beats > before) {
    answer();
  }
  tick();
}

/** A tick or a buzz for each tap, where the user wants them. */
function answer(): void {
  if (byId<HTMLInputElement>('buzz').checked) {
    navigator.vibrate?.(15);
  }
  if (byId<HTMLInputElement>('sound').checked) {
    sound ??= new AudioContext();
    const tone = sound.createOscillator();
    const soft = sound.createGain();
    soft.gain.value = 0.1;
    tone.connect(soft).connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + 0.03);
  }
}
let sound: AudioContext | undefined;

function takeBack(): void {
  if (count !== null) {
    count = undo(count);
    paint();
  }
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
  byId('rate').textContent = done && count !== null ? `${rateOf(count)} a minute` : '';
  byId('usual').textContent = usual.get(keyOf(kind)) ?? '';
  byId('after').hidden = !done;
  byId<HTMLButtonElement>('undo').disabled = (count?.beats ?? 0) === 0;
  byId<HTMLButtonElement>('write').disabled = !done || (count?.beats ?? 0) === 0;
  byId<HTMLButtonElement>('tap').disabled = done;
}

byId('tap').addEventListener('pointerdown', (event) => { event.preventDefault(); press(); });
byId('again').addEventListener('click', reset);
byId('undo').addEventListener('click', () => { takeBack(); byId('tap').focus(); });
window.addEventListener('message', (event: MessageEvent<{ kind: 'usual'; word: string; state: string; text: string }>) => {
  usual.set(`${event.data.word} ${event.data.state}`, event.data.text);
  paint();
});
countKinds.forEach(({ word, state }) => editor.postMessage({ kind: 'usual', word, state }));
byId('write').addEventListener('click', () => {
  if (count !== null) {
    editor.postMessage({ kind: 'write', line: lineOf(kind, count) });
  }
});
window.addEventListener('keydown', (event) => {
  const onChoice = (event.target instanceof HTMLButtonElement && event.target.id !== 'tap') || event.target instanceof HTMLInputElement;
  if (event.key === ' ' && !(onChoice && count === null && !done) && !done) {
    event.preventDefault();
    // a key held down is one press
    if (!event.repeat) {
      press();
    }
  } else if (event.key === 'Backspace') {
    takeBack();
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
