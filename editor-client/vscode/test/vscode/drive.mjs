// Drives a real VS Code with the packed extension, as a person would.
//   node drive.mjs VSCODE_DIR EXTENSION.vsix NOTES_FOLDER PICTURES_FOLDER RESULTS.json
// NOTES_FOLDER holds visit.hnote. What was seen goes to RESULTS.json; a wait that ends in vain ends the run with a picture.
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { openCode, until } from './code.mjs';

const [vscode, vsix, folder, pictures, results] = process.argv.slice(2);
const seen = {};
const written = readFileSync(join(folder, 'visit.hnote'), 'utf8').split('\n');
const state = join(folder, '.code');
const code = await openCode({ vscode, vsix, home: state, state, pictures, today: '2026-11-25' });
const { page, quick, text, lines, picture, press, command, inside } = code;
seen.installed = code.installed;
const onPath = join(state, 'bin');
const status = () => text('#hnote\\.attention, [id*="health-notes"]');
/** What the status bar says of the note, once it says something of it. */
const attention = async () => { const told = await status(); return /phone about|keep an eye on|not understood/.test(told) ? told : null; };
const goTo = (line, column = 1) => until(`the cursor in line ${line}`, async () => {
  const box = quick.locator('input').first();
  await press('Control+g', box);
  await box.fill(`:${line}:${column}`);
  await box.press('Enter');
  await quick.waitFor({ state: 'hidden', timeout: 3_000 });
  return (await text('#status\\.editor\\.selection')).includes(`Ln ${line}, Col ${column}`);
});
/** The processes of the server that is on the PATH. */
const servers = () => readdirSync('/proc').filter((id) => /^\d+$/.test(id) && commandOf(id) === `${join(onPath, 'hnote')}\0lsp\0`);
const commandOf = (id) => { try { return readFileSync(`/proc/${id}/cmdline`, 'utf8'); } catch { return ''; } };
/** The title of a paper that was made to be printed, whose file is named in a message. */
const printed = async (file) => {
  const told = await until(`the word on ${file}`, async () => { const said = await text('.notification-toast .notification-list-item-message'); return said.includes(file) ? said : null; });
  await page.locator('.notification-toast').first().hover();
  await picture(`11-${file.replace('.html', '')}`);
  const path = new RegExp(`/\\S*${file}`).exec(told)[0];
  const title = readFileSync(path, 'utf8').match(/<title>([^<]*)/)?.[1];
  rmSync(dirname(path), { recursive: true });
  await command('Notifications: Clear All Notifications');
  return title;
};
const step = async (name, what) => {
  const begun = Date.now();
  await what();
  seen.steps = [...(seen.steps ?? []), name];
  console.log(`ok ${name} (${Date.now() - begun} ms)`);
};

try {
  const opened = Date.now();
  await code.open(folder, 'visit.hnote');
  await step('the note opens, and its status is shown', async () => {
    await until('the note', async () => (await lines()).includes('pet Marlow'));
    seen.opened = Date.now() - opened;
    seen.status = await until('the status bar', attention);
    seen.activated = Date.now() - opened;
    await page.keyboard.press('Control+b');
    await picture('1-opened');
  });
  // by its place: a click on the element would scroll it within itself
  await page.mouse.click(500, 300);
  const slip = written.findLastIndex((line) => line.includes('gait stif ')) + 1;
  await step('a fix is taken', async () => {
    await goTo(slip, 9);
    await until('the slip', async () => (await lines()).includes('gait stif '));
    await until('the mark below the slip', async () => (await page.locator('.squiggly-error, .squiggly-warning').count()) > 0);
    await press('Control+.', page.locator('.action-widget', { hasText: 'stiff' }));
    seen.fixes = await text('.action-widget');
    await picture('2-fixes');
    await until('the fix in front', async () => (await text('.action-widget .monaco-list-row.focused')).includes('stiff'));
    await page.keyboard.press('Enter');
    await until('the corrected word', async () => (await lines()).includes('gait stiff '));
  });
  await step('a line is typed: list of words, hint, warning', async () => {
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await page.keyboard.type('li', { delay: 60 });
    seen.offered = await until('the list of words', async () => { const told = await text('.suggest-widget'); return told.includes('limb') ? told : null; });
    await picture('3-words');
    await until('limb in front', async () => (await text('.suggest-widget.visible .monaco-list-row.focused')).startsWith('limb'));
    await page.keyboard.press('Tab');
    await until('the word', async () => (await lines()).includes('  limb'));
    // with the list open and a longer word in front, Enter only ends the line: what was written is never exchanged
    await page.keyboard.type(' o', { delay: 60 });
    await until('a longer word in front', async () => (await text('.suggest-widget.visible .monaco-list-row.focused')).startsWith('ok'));
    await page.keyboard.press('Enter');
    await until('the next line', async () => (await text('#status\\.editor\\.selection')).includes(`Ln ${slip + 2}, Col 3`));
    seen.asWritten = (await lines()).match(/limb o\w*$/m)?.[0];
    await goTo(slip + 1, '  limb o'.length + 1);
    await page.keyboard.type('k');
    await page.keyboard.press('Escape');
    await goTo(slip + 2);
    await page.keyboard.press('Shift+End');
    await page.keyboard.type('  gums grey', { delay: 60 });
    await page.keyboard.press('Enter');
    await page.keyboard.type('hr 45/15s', { delay: 40 });
    const typed = Date.now();
    await until('the hint', async () => (await lines()).includes('180/min') || (await lines()).includes('180 /min'));
    seen.hintAfter = Date.now() - typed;
    await page.keyboard.press('Escape');
    await page.keyboard.press('Enter');
    await until('the mark below the gums', async () => (await page.locator('.squiggly-error, .squiggly-warning').count()) > 0);
    seen.statusAfter = await until('the status', async () => { const told = await attention(); return told?.includes('phone about now') ? told : null; });
    await picture('4-typed');
  });
  await step('the page stands beside, and follows what is written', async () => {
    await command('Health Notes: Page beside');
    const frame = await inside('section.problems');
    seen.title = await frame.locator('h1').innerText();
    seen.pageScripts = await frame.locator('script').count();
    await until('the count on the page', async () => (await frame.locator('body').innerText()).includes('45/15s'));
    await page.keyboard.press('ArrowUp');
    await until('the page at the line', async () => (await frame.evaluate(() => window.scrollY)) > 200);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('> the limp is worse in the cold', { delay: 20 });
    const typed = Date.now();
    await page.keyboard.press('Escape');
    await until('the words on the page', async () => (await frame.locator('body').innerText()).includes('worse in the cold'));
    seen.pageAfter = Date.now() - typed;
    // the owner's words stand far down: the page must not be thrown back to its top
    await until('the place kept', async () => (await frame.evaluate(() => window.scrollY)) > 200);
    await picture('5-page');
    await frame.evaluate(() => window.scrollTo({ top: 0, behavior: 'instant' }));
    await picture('5-page-top');
  });
  await step('breaths are counted by a clock that the test drives', async () => {
    await page.keyboard.press('Enter');
    await command('Health Notes: Count beats');
    const frame = await inside('#tap');
    await frame.evaluate(() => { let at = 0; window.healthNotesClock = { now: () => at }; window.setClock = (ms) => { at = ms; }; });
    await until('the keys for the counter', async () => frame.evaluate(() => document.hasFocus() && document.activeElement?.id === 'tap'));
    await page.keyboard.press('Space');
    for (let i = 1; i <= 12; i++) {
      await frame.evaluate((ms) => window.setClock(ms), i * 2_300);
      await page.keyboard.press('Space');
    }
    await picture('6-counting');
    await frame.evaluate(() => window.setClock(30_001));
    await until('the end', async () => frame.locator('#line').isVisible());
    seen.counted = await frame.locator('#line').innerText();
    await page.keyboard.press('Space');
    await picture('7-counted');
    await page.keyboard.press('Enter');
    seen.rate = await until('the count in the note, with its rate', async () => /rr 12\/30s.*?(\d+ ?\/min).*asleep/.exec(await lines())?.[1]);
    await picture('8-written');
  });
  await step('the words on a word', async () => {
    await page.keyboard.press('Control+s');
    // five lines were written above it
    await goTo(written.findLastIndex((line) => line.startsWith('  crt ')) + 6, 4);
    await press('Control+k Control+i', page.locator('.monaco-hover-content', { hasText: 'Capillary refill' }));
    seen.hover = await text('.monaco-hover-content');
    await picture('8-hover');
    await page.keyboard.press('Escape');
  });
  await step('a rule is explained, by a text that only the server has', async () => {
    await goTo(slip + 2, 8);
    await press('Control+.', page.locator('.action-widget', { hasText: 'Explain this: gum-colour' }));
    await until('the explanation in front', async () => (await text('.action-widget .monaco-list-row.focused')).includes('Explain this: gum-colour') || (await page.keyboard.press('ArrowDown'), false));
    await page.keyboard.press('Enter');
    seen.explained = await (await inside('h1#gum-colour')).locator('p').first().innerText();
    await picture('9-explained');
    await page.locator('.tab', { hasText: 'Preview' }).locator('.codicon-close').click();
    await page.locator('.tab', { hasText: 'visit.hnote' }).first().click();
  });
  await step('a tag is renamed everywhere', async () => {
    const line = written.findIndex((one) => one.includes('@'));
    await goTo(line + 1, written[line].indexOf('@') + 3);
    await press('F2', page.locator('.rename-box input'));
    await page.locator('.rename-box input').fill('elbow-bump');
    await picture('9-rename');
    await page.keyboard.press('Enter');
    await until('the new name', async () => (await lines()).includes('@elbow-bump'));
    await page.keyboard.press('Control+s');
    const saved = await until('the saved note', async () => { const now = readFileSync(join(folder, 'visit.hnote'), 'utf8'); return now.includes('@elbow-bump') ? now : null; });
    seen.renamed = saved.split('@elbow-bump').length - 1;
    seen.notRenamed = saved.split(/@fatty\b/).length - 1;
  });
  await step('what is due is listed', async () => {
    await page.locator('.tab', { hasText: 'visit.hnote' }).first().click();
    await command('Health Notes: What is due');
    seen.due = await until('the list', async () => { const told = await text('.quick-input-list'); return /today|in \d+ days|since|\d{4}-/.test(told) ? told : null; });
    await picture('10-due');
    await page.keyboard.press('Escape');
  });
  await step('the check sheet and the page are made to be printed', async () => {
    for (const [name, file] of [['Print check sheet', 'visit-sheet.html'], ['Print page', 'visit-page.html']]) {
      await command(`Health Notes: ${name}`);
      seen[file] = await printed(file);
    }
  });
  await step("today's check is started", async () => {
    await command("Health Notes: Today's check");
    await until('the check', async () => /2026-11-25.* check/.test(await lines()));
    await picture('12-check');
  });
  await step('a first note is made', async () => {
    await page.locator('.tab', { hasText: 'Page:' }).first().locator('.codicon-close').click();
    await command('Health Notes: First steps');
    await until('the first steps', async () => (await text('.gettingStartedContainer')).includes('Before you touch'));
    await inside('li:has-text("Never hold one that breathes hard")');
    await picture('13-first-steps');
    await page.locator('.getting-started-step', { hasText: 'Make the note' }).click();
    await page.locator('.getting-started-step.expanded .monaco-button', { hasText: 'New note' }).click();
    for (const [title, words] of [['1 of 2', 'Pebble'], ['2 of 2', 'Cat']]) {
      await until(`the question ${title}`, async () => (await page.locator('.quick-input-titlebar', { hasText: title }).isVisible()) && (await quick.locator('input').first().evaluate((box) => box === document.activeElement)));
      await page.keyboard.type(words);
      await page.keyboard.press('Enter');
    }
    await until('the note', async () => (await lines()).includes('pet Pebble'));
    await picture('14-first-note');
    // a note that was never saved is printed as it stands
    await command('Health Notes: Print check sheet');
    seen.firstSheet = await printed('pebble-sheet.html');
    await page.locator('.tab', { hasText: 'pebble.hnote' }).first().click();
    await page.keyboard.press('Control+s');
    seen.firstFile = await until('the file', async () => existsSync(join(folder, 'pebble.hnote')) && (await page.locator('.tab.dirty', { hasText: 'pebble.hnote' }).count()) === 0);
  });
  const open = async (where) => {
    await page.goto(`${page.url().split('?')[0]}?${where}`);
    await page.locator('.monaco-workbench').waitFor();
  };
  const pets = async (name, has) => {
    const header = page.locator('.pane-header[aria-label^="Pets"]');
    await press('Control+Shift+e', header);
    if (await header.getAttribute('aria-expanded') === 'false') await header.click();
    seen[name] = await until('the pets', async () => { const told = await text('.pane:has(.pane-header[aria-label^="Pets"]) .pane-body'); return has.every((word) => told.includes(word)) ? told : null; });
    await picture(name);
  };
  await step('the pets of the folder: what needs attention, what is due, the last check', async () => {
    await pets('pets', ['Marlow', 'to phone about', 'in 2 days', 'Last check']);
  });
  await step('after Reload Window the page is back', async () => {
    // without a file in the address: with one, no editor is brought back
    await open(`folder=${folder}`);
    await until('the note', async () => {
      // the editor brings its last window back meanwhile, which takes the focus from a question and may put the first steps in front
      const tab = page.locator('.tab', { hasText: 'visit.hnote' }).first();
      if ((await page.locator('.tab.active', { hasText: 'visit.hnote' }).count()) > 0) return (await lines()).trim();
      if ((await tab.count()) > 0) return (await tab.click({ timeout: 2_000 }), null);
      await page.keyboard.press('Control+p');
      await quick.locator('input').first().fill('visit.hnote', { timeout: 2_000 });
      await page.waitForTimeout(1_500);
      if ((await text('.quick-input-list .monaco-list-row.focused')).startsWith('visit.hnote')) await page.keyboard.press('Enter');
      return (await page.waitForTimeout(1_000), null);
    });
    await command('Health Notes: Page beside');
    await inside('section.problems');
    await new Promise((go) => setTimeout(go, 6_000)); // the editor writes down what is open every few seconds
    await command('Developer: Reload Window');
    seen.back = await (await inside('section.problems')).locator('h1').innerText();
    await picture('15-back');
  });
  await step('an empty folder offers a new note', async () => {
    mkdirSync(join(folder, 'none'));
    await open(`folder=${join(folder, 'none')}`);
    await pets('petsOfNone', ['New health note']);
    rmSync(join(folder, 'none'), { recursive: true });
    await code.open(folder, 'visit.hnote');
    await until('the status bar', attention);
  });
  await step('the editor itself reports the time it took to start', async () => {
    await command('Developer: Show Running Extensions');
    const row = page.locator('.runtime-extensions-editor .extension', { hasText: 'Health Notes' });
    seen.activation = await until('the time', async () => /Activation: (?:Startup )?(\d+)ms/.exec((await row.allInnerTexts()).join(' ').replace(/\s+/g, ' '))?.[0]);
    await picture('15-running');
  });
  await step('without its program the same checker runs as WebAssembly, and finds the program on the PATH', async () => {
    const installed = readdirSync(join(folder, '.code/extensions')).find((name) => name.startsWith('health-notes.'));
    const server = join(folder, '.code/extensions', installed, 'server');
    renameSync(server, `${server}-away`);
    await page.reload();
    seen.wasm = await until('what WebAssembly finds', async () => { const told = await attention(); return told?.includes('phone about now') ? told : null; });
    await goTo(slip + 3);
    seen.wasmRate = await until('a hint of WebAssembly', async () => /180 ?\/min/.exec(await lines())?.[0]);
    await command('Health Notes: Page beside');
    seen.wasmPage = await (await inside('section.problems')).locator('h1').innerText();
    await picture('16-webassembly');
    await page.locator('.tab', { hasText: 'visit.hnote' }).first().click();
    symlinkSync(join(`${server}-away`, 'linux-x64/hnote'), join(onPath, 'hnote'));
    await command('Health Notes: Start the server again');
    seen.onPath = await until('what needs attention', attention);
    // and once more, while it runs: another process reads the same note
    const first = servers();
    await command('Health Notes: Start the server again');
    await until('another server', async () => { const now = servers(); return now.length === 1 && now[0] !== first[0]; });
    seen.again = await until('what needs attention', attention);
    await picture('17-on-the-path');
  });
} catch (fault) {
  seen.fault = String(fault?.stack ?? fault);
  console.log(seen.fault);
  // what a person would have before them, for a run whose pictures are gone
  for (const part of ['#status\\.editor\\.selection', '.notification-toast .notification-list-item-message', '.quick-input-list .monaco-list-row', '.suggest-widget .monaco-list-row', '.editor-group-container .view-lines']) {
    console.log(`--- ${part}\n${await text(part).catch((gone) => gone.message)}`);
  }
  await picture('fault').catch(() => undefined);
}
seen.messages = code.messages;
writeFileSync(results, JSON.stringify(seen, null, 1));
await code.close();
process.exit(seen.fault === undefined ? 0 : 1);
