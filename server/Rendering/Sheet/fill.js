'use strict';
// Puts the entry together from what is tapped. Nothing is stored or sent; text reaches the page as text alone.
(() => {
  const one = (id) => document.getElementById(id);
  const parts = [...document.querySelectorAll('section[data-start]')];
  const clean = (text) => text.replace(/[#\s]+/g, ' ').trim();
  const two = (number) => String(number).padStart(2, '0');
  const now = new Date();
  one('day').value = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  one('time').value = `${two(now.getHours())}:${two(now.getMinutes())}`;

  const pressed = (part, within) => [...part.querySelectorAll(`${within} [aria-pressed="true"]`)].map((chip) => chip.textContent);
  const valueOf = (part, selector) => clean(part.querySelector(selector)?.value ?? '');

  /** The line of a part; empty when nothing was noted. */
  const line = (part) => {
    const { start, state } = part.dataset;
    const number = valueOf(part, '.n').replace(/\s/g, '');
    const sides = pressed(part, '.sides');
    const words = [...pressed(part, '.words'), valueOf(part, '.own')].filter((word) => word !== '').join(', ');
    if (part.className === 'count') {
      return number === '' ? '' : `${start} ${number}/${part.querySelector('.seconds').value}s${state}`;
    }
    const value = number === '' ? '' : `${number}${part.querySelector('.n').dataset.unit}`;
    const seen = [sides.length === 2 ? 'both' : sides[0] ?? '', value, words].filter((word) => word !== '').join(' ');
    if (value === '' && words === '') {
      return part.querySelector('.ok')?.checked ? [start, sides.length === 2 ? 'both' : sides[0] ?? '', 'ok'].filter((word) => word !== '').join(' ') : '';
    }
    return `${start} ${seen}`;
  };

  const write = () => {
    const by = clean(one('by').value);
    const free = one('free').value.split('\n').map((text) => text.trim()).filter((text) => text !== '').map((text) => `> ${text}`);
    const question = clean(one('question').value);
    const lines = [...parts.map(line).filter((text) => text !== ''), ...(one('rest').checked ? ['else ok'] : []), ...(question === '' ? [] : [`ask ${question}`]), ...free];
    one('text').value = `${[`${one('day').value} ${one('time').value} check${by === '' ? '' : ` by ${by}`}`.replace(/\s+/g, ' '), ...lines.map((text) => `  ${text}`)].join('\n')}\n`;
  };

  document.addEventListener('click', (event) => {
    const chip = event.target.closest('[aria-pressed]');
    if (chip !== null) {
      chip.setAttribute('aria-pressed', String(chip.getAttribute('aria-pressed') !== 'true'));
      write();
    }
  });
  document.addEventListener('input', write);

  for (const part of parts.filter((section) => section.className === 'count')) {
    const tap = part.querySelector('.tap');
    const begin = tap.textContent;
    let until = 0;
    let beats = 0;
    const show = () => {
      const left = Math.max(0, Math.ceil((until - Date.now()) / 1000));
      tap.textContent = left > 0 ? `${beats} (${left} s)` : begin;
      part.querySelector('.n').value = beats === 0 ? '' : String(beats);
      write();
      if (left > 0) {
        setTimeout(show, 250);
      }
    };
    tap.addEventListener('click', () => {
      if (Date.now() >= until) {
        beats = 0;
        until = Date.now() + Number(part.querySelector('.seconds').value) * 1000;
        show();
      } else {
        beats++;
        tap.textContent = String(beats);
      }
    });
    part.querySelector('.undo').addEventListener('click', () => {
      beats = Math.max(0, beats - 1);
      part.querySelector('.n').value = beats === 0 ? '' : String(beats);
      write();
    });
  }

  one('share').hidden = navigator.share === undefined;
  one('share').addEventListener('click', () => { navigator.share({ text: one('text').value }).catch(() => undefined); });
  one('copy').addEventListener('click', async () => {
    one('text').select();
    // a file that came by mail may not use the clipboard: the older way is tried there
    const copied = await (navigator.clipboard?.writeText(one('text').value).then(() => true, () => false) ?? false) || document.execCommand('copy');
    one('told').textContent = copied ? one('told').dataset.copied : '';
  });
  write();
})();
