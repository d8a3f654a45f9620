// Drives a real VS Code as somebody who has never used it: an empty home, no folder, no mouse.
//   node alone.mjs VSCODE_DIR EXTENSION.vsix HOME_FOLDER PICTURES_FOLDER RESULTS.json LOG.hnote
// LOG.hnote is a note whose last forty lines are typed at speed, while marks on the line of the cursor and jumps of the
// page are counted; then the themes of high contrast. What was seen goes to RESULTS.json; a wait that ends in vain ends the run with a picture.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openCode } from './code.mjs';

const [vscode, vsix, home, pictures, results, log] = process.argv.slice(2);
const seen = { keys: 0 };
const code = await openCode({ vscode, vsix, home, state: join(home, '.code'), pictures, today: '2026-11-25' });
const { page, quick, until, text, lines, inside, command, picture } = code;
const key = async (keys) => { for (const one of keys.split(' ')) { await page.keyboard.press(one); seen.keys++; } };
const type = async (words, delay = 30) => { await page.keyboard.type(words, { delay }); seen.keys += words.length; };
const step = async (name, what) => {
  const begun = Date.now();
  await what();
  seen.steps = [...(seen.steps ?? []), name];
  console.log(`ok ${name} (${Date.now() - begun} ms)`);
};
/** The editor takes the focus to the steps and to each that is opened, 0.8 s later. */
const settled = () => new Promise((go) => setTimeout(go, 1_500));
const firstSteps = async () => {
  await command('Health Notes: First steps');
  await until('the first steps', async () => (await text('.gettingStartedContainer')).includes('Before you touch'));
  await settled();
};
const expand = async (title) => {
  await until(`the step ${title}`, async () => {
    await page.locator('.getting-started-step', { hasText: title }).first().focus();
    await key('Enter');
    await page.locator('.getting-started-step.expanded', { hasText: title }).waitFor({ timeout: 2_000 });
    return true;
  });
  await settled();
};
const titled = (title) => until(`the question ${title}`, async () => (await page.locator('.quick-input-titlebar', { hasText: title }).isVisible()) && (await quick.locator('input').first().evaluate((box) => box === document.activeElement)));
/** The least contrast of a text with what lies behind it, in tenths (WCAG 2.2, contrast ratio); runs in the page. */
const weakest = (selector) => {
  const parts = (colour) => { const [red, green, blue, alpha = 1] = colour.match(/[\d.]+/g).map(Number); return { colours: [red, green, blue], alpha }; };
  const over = (top, below) => top.colours.map((colour, at) => colour * top.alpha + below[at] * (1 - top.alpha));
  const behind = (one) => over(parts(getComputedStyle(one).backgroundColor), one.parentElement === null ? [255, 255, 255] : behind(one.parentElement));
  const light = (colours) => colours.map((colour) => colour / 255).map((part) => part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4).reduce((sum, part, at) => sum + part * [0.2126, 0.7152, 0.0722][at], 0);
  const ratios = [...document.querySelectorAll(selector)].filter((one) => [...one.childNodes].some((child) => child.nodeType === 3 && child.textContent.trim() !== '')).map((one) => {
    const [dark, bright] = [light(over(parts(getComputedStyle(one).color), behind(one))), light(behind(one))].sort((a, b) => a - b);
    return (bright + 0.05) / (dark + 0.05);
  });
  return ratios.length === 0 ? 0 : Math.floor(Math.min(...ratios) * 10);
};
/** What is marked in the line of the cursor. */
const marksHere = () => page.evaluate(() => {
  const cursor = document.querySelector('.editor-instance .cursors-layer .cursor')?.getBoundingClientRect();
  return cursor === undefined ? 0 : [...document.querySelectorAll('.editor-instance .squiggly-error, .editor-instance .squiggly-warning, .editor-instance .squiggly-info')]
    .filter((mark) => { const box = mark.getBoundingClientRect(); return box.top <= cursor.top + 4 && box.bottom >= cursor.bottom - 4; }).length;
});

try {
  await step('the editor opens without a folder', async () => {
    await code.open('');
    await firstSteps();
  });
  await step('what needs a note says so where there is none', async () => {
    await command("Health Notes: Today's check");
    seen.nothing = await until('the word', async () => { const told = await text('.notification-toast .notification-list-item-message'); return told.includes('no health note') ? told : null; });
    seen.tickedTooEarly = await page.locator('.getting-started-step .codicon-getting-started-step-checked.complete').count();
    await command('Notifications: Clear All Notifications');
  });
  await step('a note is made by the keyboard, with the first steps in front', async () => {
    await expand('Make the note');
    await page.locator('.getting-started-step.expanded .monaco-button', { hasText: 'New note' }).focus();
    await key('Enter');
    await titled('1 of 2');
    await type('Pebble');
    await key('Enter');
    await titled('2 of 2');
    await picture('alone-1-question');
    await type('cat');
    await key('Enter');
    const where = quick.locator('input').first();
    await until('the place to keep it', async () => /pebble\.hnote/.test(await where.inputValue()));
    await picture('alone-2-where');
    // the editor may take the focus back to its steps just now
    await until('the note', async () => (await lines()).includes('pet Pebble') || (await where.isVisible() && await where.press('Enter', { timeout: 1_000 }), null));
    seen.saved = await until('the file', async () => existsSync(join(home, 'pebble.hnote')));
  });
  await step("the steps find the note behind the first steps: today's check", async () => {
    await firstSteps();
    await expand("Today's check");
    await page.locator('.getting-started-step.expanded .monaco-button', { hasText: "Today's check" }).first().focus();
    await key('Enter');
    await until('the check', async () => /2026-11-25.* check/.test(await lines()));
    seen.emptyLogLeft = (await lines()).includes('2026-11-25 log');
    await picture('alone-3-check');
  });
  await step('next part by key takes the # away, says how to look, and opens the words', async () => {
    await key('Control+Enter');
    seen.part = await until('the words of the part', async () => { const told = await text('.suggest-widget.visible'); return told.length > 0 ? told.split('\n')[0] : null; });
    await until('how to count', async () => (await lines()).includes('Watch the chest'));
    await key('Escape Control+Enter');
    seen.how = await until('how to look', async () => /Watch from across[^.]*\./.exec(await lines())?.[0]);
    seen.putBack = (await lines()).includes('# rr asleep');
    seen.marksOnPart = await marksHere();
    await until('the words', async () => (await text('.suggest-widget.visible')).includes('bright'));
    await picture('alone-4-part');
    await page.screenshot({ path: join(pictures, 'part.png'), clip: { x: 70, y: 165, width: 560, height: 320 } });
    await type('bright');
    await key('Escape Control+Enter');
    await until('the next part', async () => /\n {2}stance ?/.test(await lines()));
    await key('Escape');
  });
  await step('the steps find the note: count, by the keyboard', async () => {
    await firstSteps();
    await command('Health Notes: Count beats');
    const frame = await inside('#tap');
    await frame.evaluate(() => { let at = 0; window.healthNotesClock = { now: () => at }; window.setClock = (ms) => { at = ms; }; });
    await until('the keys for the counter', async () => frame.evaluate(() => document.hasFocus() && document.activeElement?.id === 'tap'));
    await key('Space');
    for (let i = 1; i <= 11; i++) {
      await frame.evaluate((ms) => window.setClock(ms), i * 2_000);
      await key('Space');
    }
    await key('Backspace');
    seen.undone = await frame.locator('#tap').innerText();
    await frame.evaluate(() => window.setClock(30_001));
    await until('the end', async () => frame.locator('#line').isVisible());
    seen.before = await frame.locator('#after').innerText();
    await picture('alone-5-counted');
    await key('Enter');
    await until('the count', async () => /rr 10\/30s/.test(await lines()));
    seen.waiting = (await lines()).includes('# rr asleep');
  });
  await step('the page comes beside, dark as the editor', async () => {
    await command('Health Notes: Page beside');
    const frame = await inside('main');
    seen.dark = await frame.evaluate(() => getComputedStyle(document.body).backgroundColor);
    await picture('alone-6-page');
  });
  await step('forty lines are typed at speed: no mark on the line of the cursor, no jump of the page', async () => {
    const all = readFileSync(log, 'utf8').trimEnd().split('\n');
    writeFileSync(join(home, 'speed.hnote'), `${all.slice(0, -40).join('\n')}\n`);
    await code.open('', 'speed.hnote');
    await until('the note', async () => (await lines()).includes('pet '));
    await command('Health Notes: Page beside');
    const frame = await inside('main');
    await page.locator('.editor-instance .view-lines').first().click();
    await key('Control+End');
    await until('the page of this note', async () => (await text('.tab')).includes('Page: speed.hnote'));
    await new Promise((go) => setTimeout(go, 2_000));
    // what is in sight of the page may be pushed a little, but not thrown elsewhere
    await frame.evaluate(() => {
      window.jumps = [];
      const place = () => { for (const one of document.querySelectorAll('tbody tr, li, dd, blockquote, p, h2')) { const top = one.getBoundingClientRect().top; if (top >= 100 && top < innerHeight) return { one: one.textContent, tag: one.tagName, top }; } return null; };
      let before = place();
      new MutationObserver(() => {
        const now = before === null ? undefined : [...document.querySelectorAll(before.tag)].filter((one) => one.textContent === before.one).map((one) => Math.abs(one.getBoundingClientRect().top - before.top)).sort((a, b) => a - b)[0];
        if (now !== undefined && now > 150) window.jumps.push(before.one.slice(0, 60));
        before = place();
      }).observe(document.documentElement, { childList: true, subtree: true });
    });
    await page.evaluate(() => {
      window.marked = [];
      window.told = [];
      setInterval(() => {
        const cursor = document.querySelector('.editor-instance .cursors-layer .cursor')?.getBoundingClientRect();
        const marks = cursor === undefined ? [] : [...document.querySelectorAll('.editor-instance .squiggly-error, .editor-instance .squiggly-warning, .editor-instance .squiggly-info')]
          .filter((mark) => { const box = mark.getBoundingClientRect(); return box.top <= cursor.top + 4 && box.bottom >= cursor.bottom - 4; });
        const line = [...document.querySelectorAll('.editor-instance .view-line')].find((one) => Math.abs(one.getBoundingClientRect().top - (cursor?.top ?? 0)) < 4)?.textContent ?? '';
        if (marks.length > 0 && window.marked.at(-1) !== line) window.marked.push(line);
        const told = document.querySelector('[id*="health-notes"]')?.textContent ?? '';
        if (told !== window.told.at(-1)) window.told.push(told);
      }, 40);
    });
    const begun = Date.now();
    for (const line of all.slice(-40)) {
      for (const word of line.trim().split(/(?<= )/)) {
        await page.keyboard.type(word, { delay: 15 });
        await new Promise((go) => setTimeout(go, 80));
      }
      // behind free text an Enter goes on with it, and a second one ends it
      for (let enters = line.trim().startsWith('>') ? 2 : 1; enters > 0; enters--) {
        await page.keyboard.press('Enter');
        await new Promise((go) => setTimeout(go, 150));
      }
    }
    seen.seconds = Math.round((Date.now() - begun) / 1000);
    [seen.marked, seen.told] = await page.evaluate(() => [window.marked, window.told]);
    seen.jumps = await frame.evaluate(() => window.jumps);
    console.log(JSON.stringify([seen.seconds, seen.marked, seen.told, seen.jumps]));
    await picture('alone-7-typed');
    await key('Control+s');
    await until('the saved log', async () => (await page.locator('.tab.dirty', { hasText: 'speed.hnote' }).count()) === 0);
    seen.typed = readFileSync(join(home, 'speed.hnote'), 'utf8').trimEnd().split('\n').length - all.length;
  });
  await step('in both themes of high contrast the text, the hints and the page can be read', async () => {
    for (const [name, kind] of [['Default High Contrast', 'hc-black'], ['Default High Contrast Light', 'hc-light']]) {
      code.setting('workbench.colorTheme', name);
      await code.open('', 'speed.hnote');
      await page.locator(`.monaco-workbench.${kind}`).waitFor();
      await until('the note', async () => (await lines()).includes('2026-'));
      await command('Health Notes: Page beside');
      const frame = await inside('main');
      await page.locator('.editor-instance .view-lines').first().click();
      await key('Control+End');
      await until('a hint', async () => (await lines()).includes('= '));
      seen[kind] = Math.min(await page.evaluate(weakest, '.editor-instance .view-line span span'), await frame.evaluate(weakest, 'main *'));
      await picture(`alone-8-${kind}`);
    }
  });
} catch (fault) {
  seen.fault = String(fault?.stack ?? fault);
  console.log(seen.fault);
  for (const part of ['.notification-toast .notification-list-item-message', '.quick-input-list .monaco-list-row', '.editor-group-container .view-lines']) {
    console.log(`--- ${part}\n${await text(part).catch((gone) => gone.message)}`);
  }
  await picture('alone-fault').catch(() => undefined);
}
seen.messages = code.messages;
writeFileSync(results, JSON.stringify(seen, null, 1));
await code.close();
process.exit(seen.fault === undefined ? 0 : 1);
