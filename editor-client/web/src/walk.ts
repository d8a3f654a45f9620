// Today's check as a walk: one thing after another, a tap for each. Everything becomes a plain line of the note at once.
import { beat, isOver, left, start, type Count } from '../../vscode/src/plain/count.js';
import { button, byId, make } from './dom.js';

export interface Step { line: string; title: string; ok?: string; skip?: string; how?: string; last?: string; counted: boolean }
export interface Writer { write(line: string): void; takeBack(line: string): void }

export function walk(steps: readonly Step[], writer: Writer): void {
  const dialog = byId<HTMLDialogElement>('walk');
  const written: (string | null)[] = [];
  let timer = 0;
  const stop = (): void => clearInterval(timer);
  dialog.addEventListener('close', stop, { once: true });

  const next = (line: string | null): void => {
    written.push(line);
    if (line !== null) {
      writer.write(line);
    }
    show();
  };
  const back = (): void => {
    const line = written.pop();
    if (line) {
      writer.takeBack(line);
    }
    show();
  };

  function show(): void {
    stop();
    const step = steps[written.length];
    const body = byId('walk-step');
    const head = byId('walk-title');
    byId('walk-done').textContent = written.findLast((line) => line !== null) ?? '';
    const backButton = byId<HTMLButtonElement>('walk-back');
    backButton.disabled = written.length === 0;
    backButton.onclick = back;
    if (step === undefined) {
      head.textContent = 'The check is done';
      body.replaceChildren(make('p', {}, 'Every line is in the note. Read it once more, then show the page.'), button('Close', () => dialog.close(), 'main'));
      body.querySelector('button')?.focus();
      return;
    }
    head.textContent = `${step.title} (${written.length + 1} of ${steps.length})`;
    const words = make('input', { id: 'walk-words', autocomplete: 'off', enterKeyHint: 'done', placeholder: step.ok === undefined ? 'value, with its unit' : 'what you see, in words' });
    words.setAttribute('autocapitalize', 'off');
    const form = make('form', { onsubmit: (event) => { event.preventDefault(); if (words.value.trim() !== '') { next(`${step.line} ${words.value.trim()}`); } } },
      make('label', { htmlFor: 'walk-words' }, 'In words'), words, make('button', { type: 'submit' }, 'Write'));
    body.replaceChildren(
      ...(step.how === undefined ? [] : [make('p', {}, step.how)]),
      ...(step.last === undefined ? [] : [make('p', { className: 'last' }, `Last: ${step.last}`)]),
      ...(step.counted ? [counter(step)] : []),
      form,
      make('div', { className: 'row' },
        ...(step.ok === undefined ? [] : [button('OK', () => next(step.ok!), 'main')]),
        button('Skip', () => next(null)),
        ...(step.skip === undefined ? [] : [button('Could not look', () => next(step.skip!))])));
    (body.querySelector<HTMLButtonElement>('.main') ?? body.querySelector('button'))?.focus({ preventScroll: true });
  }

  function counter(step: Step): HTMLElement {
    let seconds = 30;
    let count: Count | null = null;
    const tap = make('button', { type: 'button', className: 'tap' }, 'Start');
    const times = [15, 30].map((time) => button(`${time} s`, () => { seconds = time; count = null; paint(); }));
    const line = (): string => {
      const [word, ...rest] = step.line.split(' ');
      return [word, `${count!.beats}/${count!.seconds}s`, ...rest].join(' ');
    };
    const keep = button('Write the count', () => next(line()), 'main');
    const paint = (): void => {
      const over = count !== null && isOver(count, performance.now());
      tap.textContent = count === null ? `Tap to start ${seconds} s, then at each ${step.line.startsWith('rr') ? 'breath' : 'beat'}`
        : over ? `${count.beats} in ${count.seconds} s` : `${count.beats} (${Math.ceil(left(count, performance.now()) / 1000)} s left)`;
      tap.disabled = over;
      keep.hidden = !over || count?.beats === 0;
      times.forEach((choice) => choice.setAttribute('aria-pressed', String(choice.textContent === `${seconds} s`)));
      if (over) {
        stop();
      }
    };
    // the finger goes down at the beat, and comes up a moment later
    const press = (): void => {
      count = count === null ? start(seconds, performance.now()) : beat(count, performance.now());
      stop();
      timer = setInterval(paint, 200) as unknown as number;
      paint();
    };
    tap.onpointerdown = (event) => { event.preventDefault(); press(); };
    tap.onkeydown = (event) => { if (!event.repeat && (event.key === ' ' || event.key === 'Enter')) { event.preventDefault(); press(); } };
    paint();
    return make('div', { className: 'count' }, make('div', { className: 'row' }, ...times), tap, keep);
  }

  show();
  dialog.showModal();
}
